"""The ceiling spec as frozen records, its rules, and its faults.

Comes in: what `exchange` read from JSON, as a `CeilingSpec` with open places.
Goes out: a `Ceiling` with everything decided, the list of what was assumed, or every fault found.
Must not happen here: arithmetic on the grid, reading or writing JSON, any float, any file or clock.
"""
