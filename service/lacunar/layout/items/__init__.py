"""Ceiling items and wall features against beams, mouldings and joists.

Comes in: what is set out already. Goes out: where each item is, what it meets, the nearest place at
which it meets nothing; how beams end at wall features.
Must not happen here: moving anything. A conflict is told, never mended.
"""
