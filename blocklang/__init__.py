"""The block language and the reasoning about sewing; draws nothing and, but for the commands, prints nothing."""

__version__ = "0.1.0"
