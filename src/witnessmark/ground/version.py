"""The version of this program, kept here so that the core and the shell read one value."""

VERSION = "0.1.0"
