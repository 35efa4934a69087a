"""Edges that are cut on the bias, where they end up, and how to handle them.

May import geometry, block, graph and cutting; nothing later on the route.
"""
