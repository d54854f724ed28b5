"""Units, money, days, errors, faults, sources and cautions."""
