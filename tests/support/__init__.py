"""Blocks made by hand, for tests that start after the language."""
