"""The documents, followed by somebody who types what stands there."""
