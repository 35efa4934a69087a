"""Starting something new: a block file from a few answers, or the folder of a plugin."""
