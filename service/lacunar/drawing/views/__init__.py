"""Views: one drawn thing each, at one scale, from its own upper left corner.

Comes in: a layout, a scale, the typeface's widths. Goes out: a `Block` of elements with its size.
Must not happen here: choosing paper or scale, one view knowing another, computing a length.
"""
