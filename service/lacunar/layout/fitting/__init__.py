"""The order of fitting: what goes up when, what each step waits for, and what passes the mouths.

In comes a layout with everything set out; out go its steps in order, each with its reasons.
"""
