"""Plain values made to be shown, the same for page, paper and terminal."""
