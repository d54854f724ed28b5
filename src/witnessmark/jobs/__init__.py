"""What is wanted becomes operations in the order the trade allows."""
