"""How large, how many and how long anything in a spec may be, each bound with its reason.

A bound is no code rule and no advice: it is where a figure is surely a slip of the pen (a room of
203 feet for one of 20'-3"), or where the work of laying out and drawing would grow past a sheet.
"""

from dataclasses import dataclass

from lacunar.measure.length import Length

# The document. The largest ceiling in these bounds needs under 60 KiB; the rest is room for layout
# by hand and long names.
DOCUMENT_BYTES = 256 * 1024
# The outline of a spec is 6 deep; more is a bracket never closed, or an attack on the reader.
JSON_DEPTH = 32
# More digits than any tape or any survey gives, few enough to convert in no time.
NUMBER_CHARACTERS = 64
NUMBER_EXPONENT = 30
# One list item for each coffer in all is the longest list there is.
LIST_ITEMS = 1000
# The largest object of a spec has under 20 names.
OBJECT_MEMBERS = 100
# Property names: the longest known one has under 20 characters.
NAME_CHARACTERS = 64

# Things counted. A room with more members than this is a building; a run with more coffers, or a
# grid with more cells, can no longer be drawn with legible ids on the largest paper.
MEMBERS = 20
FIXED_BEAMS_PER_RUN = 20
COFFERS_PER_RUN = 60
COFFERS_IN_ALL = 900

# Texts, in characters. ISO 7200 proposes lengths for title-block fields (30 for a title, 20 for
# persons, 2 for a revision index, 16 for an identification number; figures from memory); these are
# no shorter, because offices use longer ones.
CEILING_NAME = 80
LABEL = 24
DOCUMENT_NUMBER = 32
REVISION = 4
STATUS = 24
PERSON = 40
LENGTH_TEXT = 40
STOCK_NAME = 24
