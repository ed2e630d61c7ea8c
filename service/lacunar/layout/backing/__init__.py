"""Backing: what the joists offer, what is fixed to them and where, and what hangs from it.

In come finished beams; out go lines, pieces, forms and fasteners, weights and holding figures.
Nothing here judges whether something holds.
"""
