"""The few functions that every way in calls: prepare a ceiling, answer, draw, check.

Comes in: a spec as bytes. Goes out: an answer as JSON values, sheets as bytes, or every fault.
Must not happen here: arithmetic, wording, terminal output, HTTP.
"""
