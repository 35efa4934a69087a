"""Fuzzing: input made at random, guided by what it reaches; whatever comes, nothing is thrown and nothing hangs.

`python3 dev.py fuzz TARGET` runs one target; `test_targets.py` tries each for a moment, with everything found before.
"""
