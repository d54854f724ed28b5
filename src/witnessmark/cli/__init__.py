"""The command line: each command asks the restoration and shows a sheet."""
