"""What must come off to get at something, and what is open anyway."""
