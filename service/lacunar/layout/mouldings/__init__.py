"""Mouldings: crown and flat mouldings in coffers, their pieces and corners, and the saw's settings.

In come coffers and profiles; out go sections, frames, pieces and seen openings.
"""
