"""Openings as measured: held against the grid and the plan, their corners, what fits into them.

In come the coffers as planned and the tape's figures; out go measured openings, or the faults of
figures that contradict each other. Nothing here guesses what was not measured, or sizes a piece.
"""
