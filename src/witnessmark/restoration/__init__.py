"""The whole flow of one vehicle, on one page, and its only writer."""
