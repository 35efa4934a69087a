"""Patches to what is cut: sizes that a ruler has, methods, strips, strip sets and yardage.

May import geometry, diagnostics, block and graph (and assembly for which edges end outside); nothing later.
"""
