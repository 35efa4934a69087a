"""Input that means harm, or might as well, given to the real command line."""
