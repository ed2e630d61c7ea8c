"""The words of price lists: what a price is for, and what work is counted by."""

from enum import StrEnum

from lacunar.takeoff.part_records import PartKind


class MaterialPer(StrEnum):
    """What a price of a material is for.

    `piece` is a stick as bought, `each` one of what is counted; board feet are 144 cubic inches,
    gallons US gallons.
    """

    PIECE = "piece"
    SHEET = "sheet"
    PACK = "pack"
    EACH = "each"
    FOOT = "foot"
    METER = "meter"
    BOARD_FOOT = "board_foot"
    SQUARE_FOOT = "square_foot"
    SQUARE_METER = "square_meter"
    GALLON = "gallon"
    LITER = "liter"


class LaborPer(StrEnum):
    """What work is paid by. `set_up` is one setting of a saw."""

    FOOT = "foot"
    METER = "meter"
    PIECE = "piece"
    JOINT = "joint"
    COFFER = "coffer"
    SET_UP = "set_up"
    HOUR = "hour"


class OtherPer(StrEnum):
    """What else is paid by: once, for every ceiling or coffer, or so many of it."""

    JOB = "job"
    CEILING = "ceiling"
    COFFER = "coffer"
    EACH = "each"
    HOUR = "hour"


class Work(StrEnum):
    """What labor is counted of: kinds of parts, mitred long edges, joints, settings of a saw.

    A `splice` is a joint that the layout places within a board; a `joined_part` one in a part that
    is longer than all stock.
    """

    SIDE = PartKind.SIDE.value
    BOTTOM = PartKind.BOTTOM.value
    UPPER_BOARD = PartKind.UPPER_BOARD.value
    BACKING = PartKind.BACKING.value
    CLEAT = PartKind.CLEAT.value
    BLOCKING = PartKind.BLOCKING.value
    SEAM_STRIP = PartKind.SEAM_STRIP.value
    CROWN = PartKind.CROWN.value
    FLAT_MOULDING = PartKind.FLAT_MOULDING.value
    NAILER = PartKind.NAILER.value
    PANEL = PartKind.PANEL.value
    BOARD = PartKind.BOARD.value
    MITRED_EDGE = "mitred_edge"
    CROSS = "cross"
    TEE = "tee"
    ELL = "ell"
    END_AT_WALL = "end_at_wall"
    END_AT_SOFFIT = "end_at_soffit"
    OUTSIDE_CORNER = "outside_corner"
    ANGLED_CORNER = "angled_corner"
    END_AT_ANGLED_WALL = "end_at_angled_wall"
    SPLICE = "splice"
    JOINED_PART = "joined_part"
    CROWN_MITER = "crown_miter"
    CROWN_COPE = "crown_cope"
    FLAT_MITER = "flat_miter"
    LENGTH_STOP = "length_stop"
    END_ANGLE = "end_angle"
    RIP_WIDTH = "rip_width"
    EDGE_BEVEL = "edge_bevel"


PARTS = tuple(Work(kind.value) for kind in PartKind)
EDGES = (Work.MITRED_EDGE,)
CROSSINGS = (
    Work.CROSS,
    Work.TEE,
    Work.ELL,
    Work.END_AT_WALL,
    Work.END_AT_SOFFIT,
    Work.OUTSIDE_CORNER,
    Work.ANGLED_CORNER,
    Work.END_AT_ANGLED_WALL,
)
JOINTS = (
    *CROSSINGS,
    Work.SPLICE,
    Work.JOINED_PART,
    Work.CROWN_MITER,
    Work.CROWN_COPE,
    Work.FLAT_MITER,
)
SET_UPS = (Work.LENGTH_STOP, Work.END_ANGLE, Work.RIP_WIDTH, Work.EDGE_BEVEL)

# What is counted by each; by the coffer and the hour `of` says what is paid for with it.
COUNTED = {
    LaborPer.FOOT: (*PARTS, *EDGES),
    LaborPer.METER: (*PARTS, *EDGES),
    LaborPer.PIECE: PARTS,
    LaborPer.JOINT: JOINTS,
    LaborPer.COFFER: PARTS,
    LaborPer.SET_UP: SET_UPS,
    LaborPer.HOUR: PARTS,
}

# What is counted where nothing says of what: edges only where they are named, as parts have them.
USUALLY_COUNTED = {
    **COUNTED,
    LaborPer.FOOT: PARTS,
    LaborPer.METER: PARTS,
    LaborPer.COFFER: (),
    LaborPer.HOUR: (),
}

_BEAM_BOARDS = (Work.SIDE, Work.BOTTOM, Work.UPPER_BOARD)
# Whose work is paid for with a joint of each kind; parts of any kind may be joined.
PAID_WITH = {
    **dict.fromkeys((*CROSSINGS, Work.SPLICE), _BEAM_BOARDS),
    Work.JOINED_PART: (),
    Work.CROWN_MITER: (Work.CROWN,),
    Work.CROWN_COPE: (Work.CROWN,),
    Work.FLAT_MITER: (Work.FLAT_MOULDING,),
}
