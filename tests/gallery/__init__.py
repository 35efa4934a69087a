"""A library as a folder of pages."""
