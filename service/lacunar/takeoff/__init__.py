"""Counts what a ceiling is made of, and cuts it from what is sold.

A `Layout`, or several that are pooled, comes in; a take-off goes out: parts, each with its mark,
size, ends, material and everywhere it goes, and the quantities of all that is used up. Lists of
pieces with exact lengths and priced stock come in; cutting plans go out, each with a proven bound.
It must not decide where anything is or how long it is: every size is the layout's own figure. It
must not draw, read files, look at a clock of its own, or word anything.
"""
