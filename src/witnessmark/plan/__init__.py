"""Sessions, the chance of closing up in time, and days given as bands."""
