"""The colours of an editor, held against how the language itself reads a file."""
