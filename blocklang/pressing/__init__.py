"""Joins to pressing directions, with proof: what locks, what spins, and why not when not.

May import geometry, diagnostics, block, graph and assembly; nothing later on the route.
"""
