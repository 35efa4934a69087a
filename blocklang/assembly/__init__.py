"""Patch graph to joins in order, with proof: where each seam starts, stops and turns.

May import geometry, diagnostics, block and graph; nothing later on the route.
"""
