"""Advice about safety, code and craft that goes with every layout. None of it is ever a fault."""

from collections.abc import Iterator

from lacunar.layout.backing.cautions import backing_cautions
from lacunar.layout.beams.headroom_cautions import headroom_cautions
from lacunar.layout.craft_cautions import craft_cautions
from lacunar.layout.fitting.cautions import fitting_cautions
from lacunar.layout.items.cautions import item_cautions
from lacunar.layout.levels.cautions import level_cautions
from lacunar.layout.mouldings.cautions import moulding_cautions
from lacunar.layout.openings.cautions import opening_cautions
from lacunar.layout.outline.cautions import outline_cautions
from lacunar.layout.panels.board_cautions import board_cautions
from lacunar.layout.panels.joist_seams import seam_cautions
from lacunar.layout.records import Caution, Layout
from lacunar.layout.runs.mark_cautions import mark_cautions
from lacunar.layout.survey.cautions import crooked_cautions
from lacunar.model.wall_kind import WallKind


def cautions(layout: Layout) -> Iterator[Caution]:
    """Everything a careful hand would say about a layout, the gravest first."""
    yield from _structure(layout)
    yield from headroom_cautions(layout)
    yield from level_cautions(layout)
    yield from backing_cautions(layout)
    yield from _standing()
    yield from _soffits(layout)
    yield from mark_cautions(layout)
    yield from craft_cautions(layout)
    yield from moulding_cautions(layout)
    yield from board_cautions(layout)
    yield from seam_cautions(layout.panels)
    yield from fitting_cautions(layout)
    yield from item_cautions(layout)
    yield from opening_cautions(layout)
    room = layout.ceiling.room
    yield from outline_cautions(layout.outlined, measured=room.outline is not None)
    yield from crooked_cautions(layout.crooked, room.members)


def _structure(layout: Layout) -> Iterator[Caution]:
    if layout.ceiling.room.members:
        yield Caution(
            code="members_are_structure",
            text="The cased members carry the building. Never cut, drill, notch or shim them; fix"
            " the casing beside them, and ask a licensed engineer before touching one.",
            figures={},
            pointer="/room/members",
        )
    yield from _loose_sides(layout)
    if len({member.on for member in layout.ceiling.room.members}) > 1:
        yield Caution(
            code="members_cross",
            text="Cased members cross. Where they do, the casing of the family that runs through"
            " is drawn through; see how the members themselves meet before cutting the other.",
            figures={},
            pointer="/room/members",
        )


def _loose_sides(layout: Layout) -> Iterator[Caution]:
    members = enumerate(layout.ceiling.room.members)
    loose = next((position for position, member in members if not member.cleat), None)
    if loose is not None:
        yield Caution(
            code="casing_sides_without_cleats",
            text="Without cleats the sides of a casing have no line to be fixed to above. Fix them"
            " to framing beside the member.",
            figures={},
            pointer=f"/room/members/{loose}/cleat",
        )


def _standing() -> Iterator[Caution]:
    """What holds for every ceiling."""
    yield Caution(
        code="verify_in_field",
        text="Verify all sizes in the field before cutting: rooms are seldom square, nor ceilings"
        " flat.",
        figures={},
    )
    yield Caution(
        code="overhead_work",
        text="Beams overhead must be held by framing: find the joists, choose fasteners for the"
        " weight, and have heavy beams judged by a licensed engineer. Work in twos from a railed"
        " platform; protect eyes and lungs.",
        figures={},
    )
    yield Caution(
        code="wiring_in_ceiling",
        text="Find wiring, pipes and ducts before driving a fastener into the ceiling; electrical"
        " work is for a licensed electrician. In older houses have paint and textures tested for"
        " lead and asbestos before disturbing them.",
        figures={},
    )
    yield Caution(
        code="detectors_and_sprinklers",
        text="Beams form pockets that change where smoke and heat detectors and sprinklers must"
        " stand. The local code and a licensed designer decide their places; none may be covered"
        " or painted.",
        figures={},
    )


def _soffits(layout: Layout) -> Iterator[Caution]:
    if any(beam.kind is WallKind.SOFFIT for beam in layout.wall_beams):
        yield Caution(
            code="soffit_depth_assumed",
            text="The depth of a soffit is not in the spec: it is laid out as deep as the beams"
            " that meet it.",
            figures={},
            pointer="/grid",
        )
