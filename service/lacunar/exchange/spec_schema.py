"""The outline of a spec as marshmallow schemas: every name it may have, what it means, its unit."""

from lacunar.exchange import fields, panel_fields, shaped_fields
from lacunar.exchange.column_schema import COLUMNS
from lacunar.exchange.drawing_schema import DrawingSchema
from lacunar.exchange.item_schema import ItemSchema, WallFeatureSchema
from lacunar.exchange.opening_schema import MeasuredOpeningsSchema
from lacunar.exchange.outline_schema import OutlineSchema
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.survey_schema import CrookedSchema, SurveySchema
from lacunar.exchange.take_off_schema import TakeOffSchema
from lacunar.measure.units import Units
from lacunar.model import limits
from lacunar.model.beams import BottomJoint, Depth, FamilyProfile, Through
from lacunar.model.boards import BoardName, BoardRun, BoardSpecies, CenteredOn, Cut, Fastening
from lacunar.model.fasteners import FastenerKind
from lacunar.model.fixing import BetweenJoists, Service
from lacunar.model.grid import Parity
from lacunar.model.look import JointLook, SideLook, Splices
from lacunar.model.moulding import CrownMethod, FlatPlace
from lacunar.model.panel import PanelKind, SeamPlaces, Seat
from lacunar.model.room import Casing, CeilingState, JoistKind, MeasuredTo, RunName
from lacunar.model.stations import PanelsTo
from lacunar.model.woods import Species


class MemberSchema(SpecSchema):
    """A structural member hanging below the ceiling, to be cased."""

    needed = ("on", "center", "width", "drop")

    name = fields.Text("What the member is called on the sheets.", limits.LABEL)
    on = fields.OneOf("The run its place is measured along.", RunName)
    center = fields.Distance(
        "Its centerline at its start, from the datum as the room was measured."
    )
    center_at_end = fields.Distance("Its centerline at its other end, where it runs out of square.")
    width = fields.Distance("Its width, without what it is clad with.")
    drop = fields.Distance("How far it hangs below the finished ceiling at its start.")
    drop_at_end = fields.Distance("How far it hangs at its other end, where it is not level.")
    starts_at = fields.Distance(
        "Where along the other run it starts, if not at the wall, from the datum as the room was"
        " measured; its casing goes on empty."
    )
    ends_at = fields.Distance("Where along the other run it ends, if not at the wall.")
    cladding = fields.Distance("Thickness of what it is clad with already, each side and below.")
    cleat = fields.Distance(
        "Thickness of what each side of its casing is fixed to; 0 where that is done otherwise."
    )
    casing = fields.OneOf("How its casing stands about it.", Casing)
    clearance = fields.Distance("Air kept between member and casing, each side and below.")
    cased_width = fields.Distance("The finished width wished for its casing.")


class JoistsSchema(SpecSchema):
    """The joists above the ceiling."""

    needed = ("parallel_to", "first")

    parallel_to = fields.OneOf("The run the joists run along.", RunName)
    spacing = fields.Distance("From center to center.")
    first = fields.Distance("Center of the first one from the finished start wall.")
    width = fields.Distance("Thickness of one joist as seen from below.")
    kind = fields.OneOf("What the joists are.", JoistKind)
    ceiling = fields.OneOf("Whether the joists can be reached from below.", CeilingState)
    existing_finish = fields.Distance("Thickness of what lies between joists and backing.")
    species = fields.OneOf("Their species, for how fasteners hold.", Species)
    gravity = fields.Ratio(
        "Their specific gravity [ratio], oven-dry, where it is not the species' published one."
    )


class StationSchema(SpecSchema):
    """A place on the ceiling and how high the finished ceiling lies there."""

    needed = ("length", "width")

    name = fields.Text("What the station is called on the sheets.", limits.LABEL)
    length = fields.Distance("Along the length run, from the datum as the room was measured.")
    width = fields.Distance("Along the width run, from the datum as the room was measured.")
    height = fields.Distance("Finished floor to finished ceiling there.")
    above_line = fields.Distance("Instead of height: a level line up to the finished ceiling.")


class LevelingSchema(SpecSchema):
    """What is leveled to what, where stations say that the ceiling is not flat."""

    panels = fields.OneOf(
        "Whether panels hang level, or follow the ceiling so that sides are scribed to it.",
        PanelsTo,
    )
    reach = fields.Distance("How far off a beam's face a station still counts for the beam.")
    uneven = fields.Distance("By how much sides may differ along a beam before it is cautioned.")


class RoomSchema(SpecSchema):
    """The room and what hangs into it."""

    needed_sets = (("length", "width"), ("survey",), ("outline",))

    length = fields.Distance(
        "Left to right on the plan, wall W1 to wall W3; needed unless there is a survey."
    )
    width = fields.Distance("Up the plan, wall W4 to wall W2; needed unless there is a survey.")
    height = fields.Distance(
        "Finished floor to finished ceiling, at its lowest; may be left to stations with heights."
    )
    measured_to = fields.OneOf("What the tape touched.", MeasuredTo)
    wall_finish = shaped_fields.WallFinish(
        "Thickness of the wall finish [length]: one for all walls, or an object with W1 to W4."
    )
    headroom = fields.Distance("The least height wished below any beam.")
    code_edition = fields.Text(
        "The code and edition the headroom is taken from, as it is to be named in cautions.",
        limits.CODE_EDITION,
    )
    joists = fields.ObjectOf(JoistsSchema, "The joists above the ceiling.")
    members = fields.ListOf(
        fields.ObjectOf(MemberSchema, "A structural member to be cased."),
        "Structural members below the ceiling.",
        limits.MEMBERS,
    )
    survey = fields.ObjectOf(SurveySchema, "A room that may not be square, as it was measured.")
    outline = fields.ObjectOf(
        OutlineSchema, "A room with other than four walls, or with walls that jut in."
    )
    columns = COLUMNS
    crooked = fields.ObjectOf(CrookedSchema, "How the grid lies in a surveyed room.")
    stations = fields.ListOf(
        fields.ObjectOf(StationSchema, "A place where the ceiling's height was measured."),
        "Where the height of the ceiling was measured; the lowest is the reference plane.",
        limits.STATIONS,
    )
    leveling = fields.ObjectOf(LevelingSchema, "What is leveled to what.")
    ceiling_items = fields.ListOf(
        fields.ObjectOf(ItemSchema, "A light, fan, vent, detector, sprinkler, speaker or hatch."),
        "What is in or below the ceiling.",
        limits.CEILING_ITEMS,
    )
    wall_features = fields.ListOf(
        fields.ObjectOf(WallFeatureSchema, "A door, window, fireplace or cabinet."),
        "What beams should meet well at the walls.",
        limits.WALL_FEATURES,
    )


class BoxSchema(SpecSchema):
    """One family of beams."""

    profile = fields.OneOf(
        "box: hollow, of two sides and a bottom; flat: a board or two against the ceiling.",
        FamilyProfile,
    )
    sides = shaped_fields.StockPiece("Stock of the two sides: a trade name, or a real size.")
    bottom = shaped_fields.StockPiece("Stock of the bottom; of a flat beam, of its face board.")
    upper_board = shaped_fields.StockPiece(
        "Flat only: stock of a board between the ceiling and the face board."
    )
    backing = shaped_fields.StockPiece("Framing that decides the width from the inside out.")
    bottom_joint = fields.OneOf("How the bottom meets the sides.", BottomJoint)
    reveal = fields.Distance("How far the bottom is set in or up, or in from the upper board.")
    overhang = fields.Distance("How far a bottom under sides or an upper board is set out.")
    allowance = fields.Distance("Play between backing and both sides together.")
    width = fields.Distance(
        "Finished width between the side faces; of a flat beam, of its wider board."
    )
    drop = fields.Distance("Box only: depth below the finished ceiling.")


class LookSchema(SpecSchema):
    """How beams look where they meet."""

    sides = fields.OneOf(
        "Whether sides run past a crossing, or every coffer has four of its own.", SideLook
    )
    corners = fields.OneOf(
        "How sides meet in the corners of coffers, and wall beams in those of the room.", JointLook
    )
    bottoms = fields.OneOf("How bottoms meet where two beams cross.", JointLook)
    splices = fields.OneOf(
        "How a board longer than its stock may be parted: where a crossing hides the joint only, or"
        " else with a scarf as well.",
        Splices,
    )


class BeamsSchema(SpecSchema):
    """The two families of beams."""

    crosswise = fields.ObjectOf(BoxSchema, "Beams that divide the length run.")
    lengthwise = shaped_fields.SameOrObject(
        BoxSchema, 'Beams that divide the width run, or "same" for as the crosswise ones.'
    )
    through = fields.OneOf("Which family runs through at crossings.", Through)
    depth = fields.OneOf("Whether all beams take the deepest drop needed.", Depth)
    look = fields.ObjectOf(LookSchema, "How beams look where they meet.")


class FixedBeamSchema(SpecSchema):
    """A beam that lines up with something."""

    needed = ("center",)

    name = fields.Text("What the beam is called on the sheets.", limits.LABEL)
    center = fields.Distance("Its centerline, from the datum as the room was measured.")
    width = fields.Distance("Its finished width, where it is not its family's.")


class RunSchema(SpecSchema):
    """How one run is divided."""

    coffers = shaped_fields.CofferCounts("How many coffers: a total, or a list, one per zone.")
    largest_opening = fields.Distance("As few coffers as keep every clear opening within this.")
    wished_opening = fields.Distance("As many coffers as bring openings nearest to this.")
    parity = fields.OneOf("Odd centers a coffer in the run, even a beam.", Parity)
    weights = fields.ListOf(
        fields.Weight("The share of one coffer."),
        "Shares of the clear total, one per coffer over the whole run.",
        limits.COFFERS_PER_RUN,
    )
    held = fields.Distance("One size for the inner coffers; the two border coffers take the rest.")
    start = shaped_fields.AtWall("What stands at the start wall.")
    end = shaped_fields.AtWall("What stands at the end wall.")
    fixed_beams = fields.ListOf(
        fields.ObjectOf(FixedBeamSchema, "A beam whose place is given."),
        "Beams that line up with something.",
        limits.FIXED_BEAMS_PER_RUN,
    )


class GridSchema(SpecSchema):
    """Both runs."""

    length = fields.ObjectOf(RunSchema, "The run from W1 to W3.")
    width = fields.ObjectOf(RunSchema, "The run from W4 to W2.")


class MovementSchema(SpecSchema):
    """What decides how much boards move over the year."""

    species = fields.OneOf("The wood, if its movement is published.", BoardSpecies)
    cut = fields.OneOf("How the boards lay in the log.", Cut)
    coefficient = panel_fields.Number(
        "Where the species is not listed: the part of its width that a board gains for each percent"
        " of moisture."
    )
    fastening = fields.OneOf(
        "nailed: each board moves by itself; floating: all of them move as one.", Fastening
    )
    now = panel_fields.WoodMoisture("Moisture of the boards when they go up.")
    driest = panel_fields.WoodMoisture("Their least moisture in the years to come.")
    dampest = panel_fields.WoodMoisture("Their greatest moisture in the years to come.")
    trim_cover = fields.Distance(
        "How far the trim reaches over the boards, from the face they end at."
    )


class PanelSchema(SpecSchema):
    """What fills a coffer."""

    kind = fields.OneOf("What fills a coffer.", PanelKind)
    sheet = shaped_fields.SheetEdges("The sheet as sold: width is its short edge, length its long.")
    thickness = fields.Distance("Thickness of the sheet or of the boards.")
    seat = fields.OneOf("Where sheets or boards go in the order of fitting.", Seat)
    gap = fields.Distance("Left open at each edge of a sheet panel or of boards.")
    grain = fields.OneOf(
        "Sheet goods: the run that the sheet's long edge lies along; left out, either.", RunName
    )
    seams = fields.OneOf("Sheet goods: where a panel larger than the sheet is parted.", SeamPlaces)
    board = fields.OneOf("Boards: a nominal size whose face cover is published.", BoardName)
    cover = fields.Distance("Boards: the face that one board covers.")
    tongue = fields.Distance("Boards: what a board is wider than it covers.")
    parallel_to = fields.OneOf("Boards: the run they lie along.", RunName)
    run = fields.OneOf("Boards: each coffer's own, or running through above the beams.", BoardRun)
    centered_on = fields.OneOf(
        "Boards: what lies on the middle line; left out, whichever gives wider edge boards.",
        CenteredOn,
    )
    movement = fields.ObjectOf(MovementSchema, "Boards: what decides how much they move.")


class WoodSchema(SpecSchema):
    """What boards are made of."""

    species = fields.OneOf("Their species, for its published weight.", Species)
    gravity = fields.Ratio(
        "Their specific gravity [ratio], where it is not the species' published one."
    )
    moisture = fields.Ratio("Moisture as a share of the dry weight [ratio], like 0.12.")


class FixingSchema(SpecSchema):
    """How backing is fixed to the framing, and what the beams weigh."""

    between_joists = fields.OneOf(
        "What carries a beam that runs along the joists between two of them.", BetweenJoists
    )
    fastener = fields.OneOf("What goes through the backing into the framing.", FastenerKind)
    size = fields.Text(
        "The fastener's size: a gauge like 10, a diameter like 1/4, a nail like 16d.",
        limits.FASTENER_SIZE,
    )
    length = fields.Distance("Length of the fastener.")
    at_crossing = fields.Count("How many fasteners go into each joist or block [count].")
    least_penetration = fields.Distance("The least depth wished for in the framing.")
    shim = fields.Distance("Packing between ceiling and backing.")
    block_through = fields.Distance(
        "How much of a block as high as the beam's inside a fastener passes through."
    )
    block_spacing = fields.Distance("The most between blocks or fasteners along a beam.")
    end_distance = fields.Distance("From a piece's end to its first block or fastener.")
    service = fields.OneOf("Whether the wood stays dry.", Service)
    trim = fields.ObjectOf(WoodSchema, "What sides and bottoms are made of.")
    backing = fields.ObjectOf(WoodSchema, "What the backing is made of.")
    panel_gravity = fields.Ratio("Specific gravity of a sheet panel [ratio].")


class CrownSchema(SpecSchema):
    """Crown, the sprung moulding in the upper corners of every coffer."""

    face = fields.Distance("Width across its face, from edge to edge.")
    spring_from_wall = fields.Degrees(
        "The angle between its flat back and the wall, which is a beam's side: of crown sold as"
        " 38/52, 38. Never the angle from the ceiling."
    )
    drop = fields.Distance(
        "How far it comes down the side, if measured: wins over face and spring."
    )
    projection = fields.Distance(
        "How far it comes out along the ceiling, if measured: wins over face and spring."
    )
    thickness = fields.Distance("Its thickness, from face to back.")
    land = fields.Distance("Width of the flats it touches side and ceiling with.")
    method = fields.OneOf("How it is fitted.", CrownMethod)
    fit_total = fields.Distance("How much smaller a bench frame is than its opening, in all.")
    sprung_allowance = fields.Distance("How much longer a coped piece is cut, to be sprung in.")
    shortest_piece = fields.Distance("The shortest piece that is cut on the saw with safety.")
    nailer_clearance = fields.Distance("Kept open between the crown's back and its nailer.")
    most_miter = fields.Degrees("How far the saw's table turns from a square cut.")
    most_bevel = fields.Degrees("How far the saw's blade tilts from upright.")


class FlatMouldingSchema(SpecSchema):
    """A flat moulding on the sides of the beams, all around every coffer."""

    needed = ("thickness", "width")

    name = fields.Text("What it is called on the sheets.", limits.MOULDING_NAME)
    at = fields.OneOf("Where it lies: behind the crown, or along the lower edge.", FlatPlace)
    thickness = fields.Distance("How far it stands out from what it lies on.")
    width = fields.Distance("How far it reaches along the side.")


class StockSchema(SpecSchema):
    """What is true of all stock."""

    kerf = fields.Distance("Width of the saw's cut.")
    longest_board = fields.Distance("The longest board that beams are made of.")
    longest_sheet = fields.Distance("The longest strip from a sheet that beams are made of.")


class CeilingSchema(SpecSchema):
    """One room's whole job as asked for."""

    needed = ("room",)

    name = fields.Text("What the ceiling is called.", limits.CEILING_NAME)
    units = fields.OneOf("The units of lengths written without one.", Units)
    mark_to = fields.MarkStep("The step layout marks are rounded to, like 1/16 or 1 mm.")
    room = fields.ObjectOf(RoomSchema, "The room and what hangs into it.")
    beams = fields.ObjectOf(BeamsSchema, "The two families of beams.")
    grid = fields.ObjectOf(GridSchema, "How many coffers, and what stands at the walls.")
    panel = fields.ObjectOf(PanelSchema, "What fills a coffer.")
    fixing = fields.ObjectOf(FixingSchema, "How backing is fixed, and what beams weigh.")
    crown = fields.ObjectOf(CrownSchema, "Crown in the upper corners of every coffer.")
    flat_mouldings = fields.ListOf(
        fields.ObjectOf(FlatMouldingSchema, "A flat moulding on the sides of the beams."),
        "Flat mouldings, at each place from the side outward: each lies on the one before it.",
        limits.FLAT_MOULDINGS,
    )
    measured_openings = fields.ObjectOf(
        MeasuredOpeningsSchema, "Coffers as measured once the beams are up."
    )
    take_off = fields.ObjectOf(TakeOffSchema, "What a take-off goes by.")
    stock = fields.ObjectOf(StockSchema, "What is true of all stock.")
    drawing = fields.ObjectOf(DrawingSchema, "Paper and title block.")
