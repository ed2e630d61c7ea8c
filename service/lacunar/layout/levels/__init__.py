"""Levels: from heights measured at stations to shims, sides and scribes along each beam.

A decided room, its runs and the beams set out on them come in; `Levels` go out. What was not
measured is interpolated along a beam between two stations, carried on beyond the last, or told as
not measured: it must not be guessed across the room.
"""
