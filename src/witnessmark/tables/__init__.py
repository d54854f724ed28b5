"""Numbers with their pedigree: who printed them, where, and when it was read."""
