"""Surveyed rooms: from what was measured to corners, and to the rectangle a grid is laid out in.

In comes a survey; out go corners between finished faces, what was shared out to close it, the frame
of the control line, and what is left at each wall. Nothing here divides a run.
"""
