"""Pictures to scale, black on white: small SVG made of lines, with dimensions that can be read in print."""
