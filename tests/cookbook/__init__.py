"""docs/cookbook.md: read as a person reads it, and held against the program."""
