"""Options in plain sentences: what each is, what it is best in, and where it comes off worst."""

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from lacunar.choosing.criteria import value_of
from lacunar.choosing.records import (
    AnyFigure,
    Criterion,
    CrownStock,
    Found,
    Nudge,
    Option,
    OptionRun,
)
from lacunar.exchange.explain import figure_in_words
from lacunar.exchange.option_cost_words import (
    amount_text,
    cost_label,
    cost_lines,
    currency_in,
    currency_of,
    saved_text,
)
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.writing import LengthStyle, decimal_text, write_length

LABELS: Mapping[Criterion, str] = {
    Criterion.SQUARENESS: "Least square coffer",
    Criterion.SEAMS: "Seams in panels",
    Criterion.JOINTS: "Joints",
    Criterion.CUTS: "Cuts",
    Criterion.CROWN_LEFT: "Crown left over",
    Criterion.COST: "Cost",
    Criterion.HEADROOM: "Headroom",
    Criterion.BETWEEN_JOISTS: "Backing between joists",
    Criterion.CONFLICTS: "Conflicts",
    Criterion.OFF_CENTER: "Off center",
}
_AS_GOOD: Mapping[Criterion, str] = {
    Criterion.SQUARENESS: "is as square",
    Criterion.SEAMS: "has as few seams in its panels",
    Criterion.JOINTS: "has as few joints",
    Criterion.CUTS: "takes as few cuts",
    Criterion.CROWN_LEFT: "leaves as little crown over",
    Criterion.COST: "costs as little",
    Criterion.HEADROOM: "leaves as much headroom",
    Criterion.BETWEEN_JOISTS: "has as little backing between joists",
    Criterion.CONFLICTS: "has as few conflicts",
    Criterion.OFF_CENTER: "is as well centered",
}
_WORST: Mapping[Criterion, str] = {
    Criterion.SQUARENESS: "Its least square coffer is {own} to 1",
    Criterion.SEAMS: "Its panels have {own} seams",
    Criterion.JOINTS: "It has {own} joints",
    Criterion.CUTS: "It takes {own} cuts",
    Criterion.CROWN_LEFT: "It leaves {own} of crown over",
    Criterion.COST: "It costs {own}",
    Criterion.HEADROOM: "It leaves {own} below its lowest beam",
    Criterion.BETWEEN_JOISTS: "Backing lies on no joist in {own} places",
    Criterion.CONFLICTS: "It has {own} conflicts",
    Criterion.OFF_CENTER: "It stands {own} off center",
}
_STANDING = {"none": "nothing", "half": "half beams", "full": "full beams"}
_RATIO_PLACES = 3


def why(option: Option, options: int, step: Step) -> tuple[str, ...]:
    """Turn an option into two or three sentences.

    Parameters: `option`; how many `options` there are; `step` lengths are rounded to.
    """
    return (_what(option, step), *_standing(option, options, step))


def figure_text(figure: AnyFigure, step: Step, currency: str | None = None) -> str:
    """A figure as it is read, lengths rounded to `step`, amounts in `currency`."""
    value = figure.value
    if isinstance(value, Length):
        return _length(value, step)
    if isinstance(value, Decimal):
        return amount_text(value, currency)
    return str(value) if isinstance(value, int) else decimal_text(value, _RATIO_PLACES)


def grid_text(option: Option, step: Step) -> str:
    """How many coffers, and how large: `4 by 3 coffers of 3'-7" by 3'-7"`."""
    length, width = option.length, option.width
    sizes = f"{_sizes(length, step)} by {_sizes(width, step)}"
    return f"{length.coffers} by {width.coffers} coffers of {sizes}"


def beams_text(option: Option, step: Step) -> str:
    """How wide the beams are: `beams 5"`, or both families'."""
    crosswise, lengthwise = option.length.beam_width.value, option.width.beam_width.value
    if crosswise == lengthwise:
        return f"beams {_length(crosswise, step)}"
    return f"beams {_length(crosswise, step)} crosswise, {_length(lengthwise, step)} lengthwise"


def walls_text(option: Option, *, short: bool = False) -> str:
    """What stands at the walls: `half beams at all walls`, or at which of them what.

    `short` leaves the word `beams` out.
    """
    length, width = option.length, option.width
    walls = {"W1": length.start, "W2": width.end, "W3": length.end, "W4": width.start}
    at: dict[str, list[str]] = {}
    for wall, kind in walls.items():
        told = _STANDING.get(kind, kind)
        at.setdefault(told.removesuffix(" beams") if short else told, []).append(wall)
    if len(at) == 1:
        (kind,) = at
        return f"{kind} at the walls" if kind == _STANDING["none"] else f"{kind} at all walls"
    return "; ".join(f"{kind} at {', '.join(where)}" for kind, where in at.items())


def sheet_lines(option: Option, step: Step) -> tuple[str, ...]:
    """What stands under an option's plan on a sheet: what it is."""
    lines = (grid_text(option, step), beams_text(option, step), walls_text(option, short=True))
    return tuple(line[:1].upper() + line[1:] for line in lines)


def sheet_figures(
    option: Option, options: Sequence[Option], step: Step
) -> Iterator[tuple[str, str, bool]]:
    """Each figure of an option: what it is, how much, and whether no other one is better."""
    for place, each in enumerate(option.judged):
        others = [other.judged[place] for other in options]
        column = [value_of(other.criterion, other.figure) for other in others]
        best = value_of(each.criterion, each.figure) == min(column) < max(column)
        if each.criterion is not Criterion.COST:
            yield LABELS[each.criterion], figure_text(each.figure, step), best
        elif option.cost is not None:
            yield cost_label(option.cost), figure_text(each.figure, step), best
    if option.cost is not None and Criterion.COST not in {each.criterion for each in option.judged}:
        yield cost_label(option.cost), figure_text(option.cost.total, step), False
    if option.crown is not None:
        yield "Crown sticks", _sticks(option.crown, step), False
    if option.score is not None:
        yield "Score, 0 the best", figure_text(option.score, step), False


def explain_options(found: Found, step: Step) -> str:
    """Turn options into the text of all of them, each figure with its sum."""
    return "\n".join(_lines(found, step))


def _lines(found: Found, step: Step) -> Iterator[str]:
    for option in found.options:
        yield f"Option {option.number}: {' '.join(why(option, len(found.options), step))}"
        for each in option.judged:
            yield f"  {figure_in_words(LABELS[each.criterion], each.figure, step.units)}"
        if option.crown is not None:
            yield f"  Crown sticks: {_sticks(option.crown, step)}."
        if option.cost is not None:
            yield from (f"  {line}" for line in cost_lines(option.cost))
        if option.score is not None:
            yield f"  {figure_in_words('Score', option.score, step.units)}"
    if found.nudges is not None:
        nudges = found.nudges
        yield f"Small changes of option {nudges.option}: {nudges.tried} tried."
        currency = currency_in(found)
        yield from (f"  {nudge_text(each, step, currency)}" for each in nudges.nudges)
    counts = found.counts
    yield (
        f"Looked at: {counts.combinations} combinations by their runs, {counts.laid_out} of"
        f" {counts.to_lay_out} laid out{', then stopped' if counts.stopped else ''}."
    )
    yield from (f"Not searched: {each.text}" for each in found.not_searched)


def nudge_text(nudge: Nudge, step: Step, currency: str | None = None) -> str:
    """A small change, what it saves or takes, and by which criteria it is worse."""
    saved = [
        f"{abs(number)} {word}{'' if abs(number) == 1 else 's'} {'less' if number > 0 else 'more'}"
        for word, number in (
            ("stick", nudge.sticks_saved),
            ("seam", nudge.seams_saved),
            ("filler", nudge.fillers_saved),
        )
        if number
    ]
    saved += saved_text(nudge.money_saved, currency)
    changed = [
        f"{LABELS[each.criterion].lower()} {figure_text(each.before, step)} to"
        f" {figure_text(each.after, step)}"
        for each in nudge.changes
        if each.criterion is not Criterion.COST
    ]
    return f"{_nudge_what(nudge, step)}: {'; '.join((*saved, *changed)) or 'changes nothing'}."


def _nudge_what(nudge: Nudge, step: Step) -> str:
    if nudge.wider is None:
        return f"{nudge.wall} {nudge.condition}"
    wider = nudge.wider.inches > 0
    return f"Beams {_length(abs(nudge.wider), step)} {'wider' if wider else 'narrower'}"


def _what(option: Option, step: Step) -> str:
    walls, beams = walls_text(option), beams_text(option, step)
    return f"{grid_text(option, step)}, {beams}, {walls}."


def _standing(option: Option, options: int, step: Step) -> Iterator[str]:
    if options == 1:
        yield "Of all that was laid out, no other comes near it in everything."
        return
    if option.stands_out_by:
        words = [_AS_GOOD[criterion] for criterion in option.stands_out_by]
        yield f"No other option {_listed(words)}."
    else:
        yield "Another option comes to the same in everything."
    behind = option.behind
    if behind is None:
        return
    own = next(each.figure for each in option.judged if each.criterion is behind.criterion)
    currency = currency_of(option.cost)
    told = _WORST[behind.criterion].format(own=figure_text(own, step, currency))
    yield f"{told}, against {figure_text(behind.than, step, currency)} in option {behind.option}."


def _sticks(crown: CrownStock, step: Step) -> str:
    return ", ".join(f"{each.quantity} of {_length(each.length, step)}" for each in crown.sticks)


def _listed(words: Sequence[str]) -> str:
    if len(words) == 1:
        return words[0]
    return f"{', '.join(words[:-1])} and {words[-1]}"


def _sizes(run: OptionRun, step: Step) -> str:
    least, most = run.smallest_opening.value, run.largest_opening.value
    if least == most:
        return _length(least, step)
    return f"{_length(least, step)} to {_length(most, step)}"


def _length(length: Length, step: Step) -> str:
    return write_length(length, LengthStyle(step.units, step, with_unit=True))
