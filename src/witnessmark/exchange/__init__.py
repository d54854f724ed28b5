"""Spreadsheets and calendars in and out, and the whole record as one archive."""
