"""Exact numbers: lengths, the notations they are read from and written in, rounding, reasons.

Comes in: numbers, and text as people write lengths. Goes out: exact `Length`s and `Area`s, text,
and `Figure`s that carry their reason. What must not happen here: a float, a word about ceilings, or
anything that reads a file, a clock or a setting.
"""
