"""What measured openings come to, put together: openings, crown, panels and boards."""

from collections.abc import Mapping, Sequence

from lacunar.layout.mouldings.out_of_square import out_of_square_crown
from lacunar.layout.opening_records import MeasuredOpenings
from lacunar.layout.openings.as_measured import measured_openings
from lacunar.layout.openings.grid_id import NONE_CUT, grid_id
from lacunar.layout.panels.sheet_goods import AsMeasured
from lacunar.layout.panels.tapered_boards import tapered_boards
from lacunar.layout.panels.tapered_panels import tapered_panels
from lacunar.layout.records import Coffer
from lacunar.measure.plane import Spot
from lacunar.model.ceiling import Ceiling


def as_measured(
    ceiling: Ceiling,
    coffers: Sequence[Coffer],
    cut: Mapping[str, Sequence[Spot]] = NONE_CUT,
) -> AsMeasured:
    """Turn what was measured in the grid of these coffers into openings and tapered panels.

    `cut` are the corners of those that walls or columns cut.

    Raises SpecRefused where the grid is another, or with every opening that cannot close.
    """
    opened = measured_openings(
        ceiling.measured_openings, grid_id(coffers, cut), coffers, tuple(cut)
    )
    return AsMeasured(
        openings=opened,
        tapered=tuple(tapered_panels(ceiling.panel, opened)),
        tapered_boards=tuple(tapered_boards(ceiling.panel, opened)),
    )


def measured_outcome(
    ceiling: Ceiling, coffers: Sequence[Coffer], measured: AsMeasured
) -> MeasuredOpenings | None:
    """Turn what was measured into all that follows from it where coffers are out of square.

    None where nothing was measured. What follows of square ones stands with mouldings, panels and
    boards.
    """
    if ceiling.measured_openings is None:
        return None
    known = {opening.coffer for opening in measured.openings}
    return MeasuredOpenings(
        grid=ceiling.measured_openings.grid,
        openings=measured.openings,
        not_measured=tuple(coffer.id for coffer in coffers if coffer.id not in known),
        crown=tuple(out_of_square_crown(ceiling, measured.openings)),
        panels=measured.tapered,
        boards=tuple(field for field, _ in measured.tapered_boards),
    )
