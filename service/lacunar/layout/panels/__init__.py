"""Panels: sheet goods with their seams and rips, boards with their courses and movement.

In come coffers and what stands about them; out go the pieces that fill them.
"""
