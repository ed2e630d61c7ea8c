"""Solids: what a ceiling is built of as faces in the room, and what of their edges is seen.

In: places in the room in millimeters (x along the length run, y along the width run, z up from the
finished ceiling), from a layout's figures. Out: pieces of edges, still in the room, with what hides
them taken away; `pictures` alone puts them on paper. Nothing here words anything, and nothing is
painted over: what is hidden is not there.
"""
