"""Painters: from composed sheets to files' contents. The only place that knows what paints them.

Comes in: `Sheet`s in millimeters of paper, the `Typeface`, and the record for a PDF's properties.
Goes out: SVG text, PDF, PNG and DXF bytes, the same for the same input. Raised:
`DrawingUnavailable` where this machine cannot draw, `ValueError` where a sheet is not fit to be
painted. Must not happen here: moving, shrinking, leaving out or adding anything on a sheet; drawing
with a font other than the project's own, but for DXF, which can only name one; reading the clock;
fetching anything from a network.
"""
