"""Packs: block files in one file with a manifest, to be read, checked, compared, signed and passed on.

May import catalogue and every stage, never the library: the library reads packs. A pack from a stranger is data;
`archive` and `reading` refuse whatever this program would not have written.
"""
