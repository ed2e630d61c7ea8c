"""Where parts come from: each module turns what a layout tells of one trade into pieces.

What a layout does not tell of a piece is taken from the spec's `take_off` section, never guessed
here.
"""
