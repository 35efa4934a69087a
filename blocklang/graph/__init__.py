"""Block to patch graph: junctions, seam segments, straight runs, and everything that can be wrong with them.

May import geometry, diagnostics and block; nothing later on the route.
"""
