"""Lets `python -m blocklang` do what the command `blocklang` does."""

from blocklang.cli import main

main()
