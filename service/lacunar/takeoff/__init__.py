"""Counts what a ceiling is made of.

A `Layout`, or several that are pooled, comes in; a take-off goes out: parts, each with its mark,
size, ends, material and everywhere it goes, and the quantities of all that is used up. It must not
decide where anything is or how long it is: every size is the layout's own figure. It must not
round, count sticks or sheets to be bought, or word anything.
"""
