"""Sewing orders held against every other order: layouts, random blocks and searches that share no code with the planner."""
