"""An invented vehicle with two years of lines as a tired person types them."""
