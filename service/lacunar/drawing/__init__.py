"""Drawing: from a layout to sheets of paper, and from sheets to files.

Comes in: a `Layout` and its digest, and where sheets tell of them its take-off and what is bought
for it. Goes out: composed `Sheet`s in millimeters of paper, painted as SVG, PDF, PNG and DXF, and
the checker's findings about the emitted SVG.
Must not happen here: computing a length that is not already in these; shrinking text; and,
outside `painters`, any file, cairo, svgwrite or font: composition measures text by numbers alone.
"""
