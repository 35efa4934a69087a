"""A block file with the same words in every field that takes a text: what a stranger might write in them."""

FILE = """block "WORDS" language 1
by "WORDS" licence CC-BY-4.0 source "WORDS"
note "WORDS"
size 6 in
fabric fog as F background light #e8eef2 "WORDS"
fabric deep as D accent dark #1f3a5f "WORDS"
rows
  F D
  D F
end
"""
