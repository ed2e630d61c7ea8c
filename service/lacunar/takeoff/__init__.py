"""Taking off: what a ceiling is made of, counted, and how it is cut from what is sold.

Comes in: lists of pieces with exact lengths, and what they are cut from. Goes out: plans and lists,
each figure exact. Must not happen here: setting out, drawing, JSON, files, a clock of its own.
"""
