"""Chooses: which layouts of a ceiling are worth considering, and what a small change would save.

Comes in: a spec, and within which limits it may be varied. Goes out: the layouts that no other one
beats, each with its figures and what it is best in, and what was not searched. Runs are divided by
themselves first; only what is left then is laid out and taken off whole. Must not happen here:
anything that is not judged by a layout, a take-off or an estimate as everybody gets it, a look at a
clock, or leaving something out without saying so.
"""
