"""Printed sheets and labels: sheets become pages of a PDF."""
