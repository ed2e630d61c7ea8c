"""Beams: their profiles, drops and lengths, what runs through at crossings, and what they clear.

In come divided runs and the families' boxes; out go profiles, beams, headroom and heights.
"""
