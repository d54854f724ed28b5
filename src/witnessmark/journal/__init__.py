"""Facts, their reading order, strikes, and the lifting of old versions."""
