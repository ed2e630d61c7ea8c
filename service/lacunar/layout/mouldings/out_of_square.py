"""Crown in coffers out of square: both ways it can go in, and the saw at each of their corners."""

from collections.abc import Iterator, Sequence

from lacunar.layout.mouldings.crown import crown_section
from lacunar.layout.mouldings.measured_pieces import (
    asked_for,
    coped_crown,
    fitting,
    mitred_crown,
    shape_of,
)
from lacunar.layout.mouldings.pieces import CrownInCoffers, flats_at, standing_out
from lacunar.layout.mouldings.saw_settings import saw_settings
from lacunar.layout.opening_records import CornerCut, MeasuredOpening, OutOfSquareCrown
from lacunar.model.ceiling import Ceiling
from lacunar.model.moulding import FlatPlace


def out_of_square_crown(
    ceiling: Ceiling, measured: Sequence[MeasuredOpening]
) -> Iterator[OutOfSquareCrown]:
    """Turn measured openings into crown for those out of square; none without crown."""
    if ceiling.crown is None:
        return
    crown = CrownInCoffers(ceiling.crown, crown_section(ceiling.crown))
    behind = standing_out(flats_at(FlatPlace.CEILING, ceiling.flat_mouldings))
    for opening in measured:
        way = fitting(opening, crown, asked_for(ceiling, opening))
        if way is not None:
            shape = shape_of(opening)
            yield OutOfSquareCrown(
                coffer=opening.coffer,
                chosen=way,
                coped=coped_crown(shape, crown, behind),
                mitred=mitred_crown(shape, crown, behind),
                corners=tuple(_cuts(crown, opening)),
            )


def _cuts(crown: CrownInCoffers, opening: MeasuredOpening) -> Iterator[CornerCut]:
    asked, spring = crown.asked, crown.section.spring_from_wall
    for corner in opening.corners:
        settings = saw_settings(spring, corner.angle.value, asked.most_miter, asked.most_bevel)
        yield CornerCut(corner.between, settings)
