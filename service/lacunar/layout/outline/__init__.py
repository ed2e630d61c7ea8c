"""Rooms with other than four walls: from sides to corners, to walls, and to what fits between them.

In comes an outline; out go its walls with what stands at each, the region left between them, where
beams stand in it, and the coffers: whole ones, and those that the walls cut. Nothing here divides a
run: the grid is that of the rectangle about the room.
"""
