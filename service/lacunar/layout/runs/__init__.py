"""Runs: how many coffers, where the beams' faces lie, what stands at the walls, which marks result.

In come the room, the grid and the families' widths; out go divided runs, coffers and marks. Nothing
here knows what a beam is built of.
"""
