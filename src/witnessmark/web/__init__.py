"""Pages for phone, tablet and desk: each asks the restoration and shows the answer. Begin at routes.py."""
