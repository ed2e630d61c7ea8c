"""JSON to the model, and results to JSON: the one place that knows how a ceiling is spelled.

Comes in: the bytes of a spec, or a decided `Ceiling`, a `Layout`, faults.
Goes out: a `CeilingSpec` or every fault in it with its JSON pointer; JSON values and sentences.
Must not happen here: arithmetic on the ceiling (a figure is worded, never worked out again), HTTP,
files, a clock.
"""
