"""What each fact leaves to be done, and the line that caused it."""
