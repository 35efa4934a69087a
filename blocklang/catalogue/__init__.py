"""What a person looks for in a library: facts about each block, how hard it is, a small picture, and an index.

May import the stages up to assembly; knows no library and no pack. The index holds facts by place and contents.
"""

from blocklang.catalogue.facts import Facts, facts_of
from blocklang.catalogue.index import Index, Known, Stamp
from blocklang.catalogue.picture import small_picture
from blocklang.catalogue.searching import Asked, Range, Refused, read_range, read_sizes

__all__ = [
    "Asked", "Facts", "Index", "Known", "Range", "Refused", "Stamp", "facts_of", "read_range", "read_sizes", "small_picture",
]  # fmt: skip
