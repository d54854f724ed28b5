"""Optimisers on plain integers, each with an independent checker."""
