"""Grids that follow walls out of square: beams aslant, coffers with four corners of their own.

In come runs divided along their walls; out go where lines cross, how beams are cut, and coffers as
openings with sides, diagonals and corners. Nothing here divides a run or sizes a moulding.
"""
