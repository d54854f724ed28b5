"""Faults in a record: one rule a file, each a generator over the entries."""
