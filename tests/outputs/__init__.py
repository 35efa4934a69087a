"""Diagrams, colouring pages and quilt previews, held against what their drawings hold."""
