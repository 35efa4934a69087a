"""What a person looks for in a library: facts about each block, how hard it is, a small picture, and an index.

May import the stages up to cutting; knows no library and no pack. The index holds facts by place and contents.
A search of an indexed library loads `index` and `searching` only, which know no stage.
"""
