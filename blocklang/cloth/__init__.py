"""Cutting plans for cloth: strips across the width, sub-cuts along them, and how short the cloth can be at all.

May import cutting and all that lies before it; nothing later on the route.
"""
