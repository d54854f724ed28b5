"""One typed line, understood and read back as a full sentence."""
