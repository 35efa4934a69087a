"""A plugin that ends the program when it is imported."""

raise SystemExit("goodbye")
