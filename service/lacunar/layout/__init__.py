"""Setting out: from a decided ceiling to where everything stands.

Comes in: a `Ceiling`. Goes out: a `Layout`: divisions, beams, coffers, profiles, panels, headroom
and running marks, every figure with the rule and operands it came from, plus cautions.
Must not happen here: wording of figures, paper, scales, floats, rounding but in `runs.marks`.
"""
