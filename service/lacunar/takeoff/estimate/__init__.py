"""Prices what was taken off.

Layouts, their take-off, what is bought for it, and a price list with labor rates come in; an
estimate goes out: lines with their amounts and what is behind each, what has no price, and what is
added on the way to the total. It must not price anything by a figure that nobody gave or that is
not listed as assumed, count anything anew that a layout or a take-off tells, or round money
elsewhere than in `measure/money`.
"""
