"""The one table of pens and text heights.

Line widths are members of the ISO 128 series (0.18 0.25 0.35 0.5 0.7), each with one meaning, none
thinner than 0.18. Capital heights are members of the ISO 3098 series (2.5 3.5 5 7), none below 2.5:
a smaller letter is lost on a site print. Dashes are millimeters on paper, whatever the scale.
Series from memory of the standards.
"""

from lacunar.drawing.elements import Pen

FRAME = Pen("frame", 0.7)
WALL = Pen("wall", 0.7)
CUT = Pen("cut", 0.5)
OBJECT = Pen("object", 0.35)
RULE = Pen("rule", 0.35)
FINE = Pen("fine", 0.25)
DIMENSION = Pen("dimension", 0.25)
TICK = Pen("tick", 0.5)
LEADER = Pen("leader", 0.25)
CENTER = Pen("center", 0.25, (7.0, 1.2, 1.2, 1.2))
CONTROL = Pen("control", 0.35, (7.0, 1.2, 1.2, 1.2, 1.2, 1.2))
HIDDEN = Pen("hidden", 0.35, (2.4, 1.2))
CLEARANCE = Pen("clearance", 0.25, (1.2, 0.8))
HATCH = Pen("hatch", 0.18)

PENS = (
    *(FRAME, WALL, CUT, OBJECT, RULE, FINE, DIMENSION, TICK, LEADER),
    *(CENTER, CONTROL, HIDDEN, CLEARANCE, HATCH),
)

TEXT = 2.5
HEADING = 3.5
TITLE = 5.0
SHEET_NUMBER = 7.0

LINE_PITCH = 4.2

FIRST_STRING = 10.6
STRING_PITCH = 7.5
EXTENSION_GAP = 1.6
EXTENSION_OVERRUN = 1.8
TICK_REACH = 1.15
TEXT_ABOVE_LINE = 0.95
TEXT_CLEARANCE = 0.6
