"""Sheets: frame, title block and the blocks beside a view, composed on paper.

Comes in: views and blocks. Goes out: `Sheet`s with everything placed inside the frame.
Must not happen here: shrinking text, splitting a plan silently, reading the clock.
"""
