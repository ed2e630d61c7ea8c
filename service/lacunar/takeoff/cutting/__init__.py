"""Cutting plans: which piece is cut from which length or sheet of stock, at least cost.

Comes in: pieces and priced stock, exact (`asked`). Goes out: plans with a proven lower bound
(`plan_records`, `sheet_records`). Must not happen here: anything about ceilings, JSON, a look at a
clock (a `Guard` that is handed in has one), chance that is not seeded. Costs and bounds are whole
numbers; floats occur only in the linear programs, and nothing that is claimed rests on one, but for
what is told as proven by `search`.
"""
