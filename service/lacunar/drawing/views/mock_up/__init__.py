"""Paper to be cut out, folded and taped up: how a beam and its mouldings will look, at full size.

What is seen of a beam comes unfolded, across the strip from ceiling to ceiling; crown and flat
mouldings come as their faces; a card has the outline to hold against a wall.
"""

from lacunar.drawing.views.mock_up.card import card
from lacunar.drawing.views.mock_up.paper_strip import Sheeting, strip_pieces
from lacunar.drawing.views.mock_up.unfolded import PaperStrip, moulding_strips, unfolded

__all__ = ["PaperStrip", "Sheeting", "card", "moulding_strips", "strip_pieces", "unfolded"]
