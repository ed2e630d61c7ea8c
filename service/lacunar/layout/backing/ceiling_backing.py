"""Backing: along which lines the beams are held, and what hangs from them."""

from lacunar.layout.backing.forms import backing_forms
from lacunar.layout.backing.holds import HoldTask, holds
from lacunar.layout.backing.lines import LineTask, backing_lines
from lacunar.layout.backing.weights import HungPanel, weights
from lacunar.layout.backing_records import Backing, Hold, JoistLines
from lacunar.layout.set_out_beams import SetOutBeams
from lacunar.model.beams import Flat
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import RunName


def backing(
    ceiling: Ceiling,
    beams: SetOutBeams,
    lines: JoistLines | None,
    panels: tuple[HungPanel, ...],
) -> Backing:
    """Turn beams that are set out, and the joists above them, into their backing.

    Forms are counted for any ceiling. Where joists or fixing are told of, lines with the places to
    fix at and weights come with them; reference figures of fasteners where the joists are known.
    """
    joists, fixing = ceiling.room.joists, ceiling.fixing
    built = {RunName.LENGTH: ceiling.beams.crosswise, RunName.WIDTH: ceiling.beams.lengthwise}
    flats = [run for run, family in built.items() if isinstance(family, Flat)]
    forms = beams.forms or backing_forms(beams.runs, flats)
    if fixing is None:
        return Backing(lines, (), forms, None, ())
    weighed = weights(beams, fixing, ceiling.panel, panels)
    held: tuple[Hold, ...] = ()
    if joists is not None:
        held = tuple(holds(HoldTask(ceiling, joists, fixing, beams.profiles), weighed.beams))
    found = tuple(backing_lines(LineTask(beams, lines, fixing)))
    return Backing(lines, found, forms, weighed, held)
