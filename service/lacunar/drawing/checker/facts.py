"""What the layout's JSON says that a sheet can be held against, in exact millimeters.

Only the JSON is read, as any other program would get it: its `exact` figures, not its decimals.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from lacunar.drawing.checker.backing_facts import BackingFacts, read_backing
from lacunar.drawing.checker.crooked_facts import CrookedFacts, read_crooked
from lacunar.drawing.checker.detail_facts import DetailFacts, read_details
from lacunar.drawing.checker.followed_facts import FollowedFacts, read_followed
from lacunar.drawing.checker.item_facts import (
    FeatureFacts,
    ItemFacts,
    read_features,
    read_items,
)
from lacunar.drawing.checker.json_node import Node
from lacunar.drawing.checker.opening_facts import (
    OpeningFacts,
    read_cut_openings,
    read_openings,
)
from lacunar.drawing.checker.outline_facts import OutlineFacts, read_outline
from lacunar.drawing.checker.panel_facts import PanelFacts, read_panels
from lacunar.drawing.checker.pictorial_facts import PictorialFacts, read_pictorial
from lacunar.drawing.checker.profile_facts import SectionFacts, read_sections
from lacunar.drawing.checker.upright_facts import HeightFacts, read_heights

WALLS_OF_RUN = {"length": ("W1", "W3"), "width": ("W4", "W2")}


@dataclass(frozen=True, slots=True)
class Line:
    """A line across a run: how far from the datum at the start and at the end of the other run."""

    at_start: Fraction
    at_end: Fraction


@dataclass(frozen=True, slots=True)
class BeamFacts:
    """A beam, a wall beam (`wall` is its wall) or a member: two faces along the run `on`.

    `center` is the middle between them; `pieces` are where a beam starts and ends along the other
    run, empty where nothing is said.
    """

    id: str
    on: str
    near: Line
    far: Line
    center: Line
    wall: str = ""
    pieces: tuple[tuple[Fraction, Fraction], ...] = ()


@dataclass(frozen=True, slots=True)
class CofferFacts:
    """A coffer and its corners (along the length run, along the width run)."""

    id: str
    row: str
    column: str
    corners: tuple[tuple[Fraction, Fraction], ...]


@dataclass(frozen=True, slots=True)
class SeenFacts:
    """What crown leaves to be seen of a coffer, along the length run and along the width run."""

    id: str
    length: Fraction
    width: Fraction


@dataclass(frozen=True, slots=True)
class MarkFacts:
    """A running mark: whose it is, which side of it, and its rounded place from the datum.

    Marks are equal where they are marked alike, whatever their `exact` places.
    """

    kind: str
    of: str
    side: str
    mark: Fraction
    exact: Fraction = field(default=Fraction(0), compare=False)


@dataclass(frozen=True, slots=True)
class JoistFacts:
    """Which run joists lie along, how far apart, and where the first one is."""

    parallel_to: str
    spacing: Fraction
    first: Fraction


@dataclass(frozen=True, slots=True)
class LayoutFacts:
    """One layout. `marks` are those of a run at the `start` or the `end` of the other one.

    `outline` are the room's corners, counter-clockwise from the datum; `crooked` None in a room
    that is square, `followed` where the grid is, `outline_facts` in one with four walls.
    `seen` are the coffers with crown in them; `step` is what marks are rounded to; `digest` is that
    of the input, empty where not told; `direction` the run that boards or grain lie along, empty
    where neither does; `title` what title blocks must say, by field; `joists` None where none are
    known; `issued` the numbers of the sheets the set is to have; `member_profiles`
    the profiles of beams with a member in them, by the beams' ids; `sections` what beams are like
    that are cut across.
    """

    step_text: str
    step: Fraction
    digest: str
    spans: Mapping[str, Line]
    beams: tuple[BeamFacts, ...]
    wall_beams: tuple[BeamFacts, ...]
    members: tuple[BeamFacts, ...]
    coffers: tuple[CofferFacts, ...]
    seen: tuple[SeenFacts, ...]
    marks: Mapping[tuple[str, str], tuple[MarkFacts, ...]]
    outline: tuple[tuple[Fraction, Fraction], ...]
    direction: str
    openings: tuple[OpeningFacts, ...] = ()
    items: tuple[ItemFacts, ...] = ()
    features: tuple[FeatureFacts, ...] = ()
    title: Mapping[str, str] = field(default_factory=dict)
    joists: JoistFacts | None = None
    crooked: CrookedFacts | None = None
    followed: FollowedFacts | None = None
    outline_facts: OutlineFacts | None = None
    crown_reach: Fraction = Fraction(0)
    backing: BackingFacts | None = None
    panels: PanelFacts | None = None
    pictorial: PictorialFacts | None = None
    issued: tuple[str, ...] = ()
    member_profiles: Mapping[str, str] = field(default_factory=dict)
    heights: HeightFacts | None = None
    sections: SectionFacts = field(default_factory=SectionFacts)
    details: DetailFacts = field(default_factory=DetailFacts)

    @property
    def angled_beams(self) -> tuple[BeamFacts, ...]:
        """Beams at angled walls, by their ids alone: they lie along neither run."""
        odd, nowhere = self.outline_facts, Line(Fraction(0), Fraction(0))
        ids = odd.angled if odd else ()
        return tuple(BeamFacts(each, "", nowhere, nowhere, nowhere) for each in ids)

    def before(self, run: str, end: str) -> Fraction:
        """How far a run's start wall lies before the line that is divided, at one end."""
        return self.crooked.runs[run, end].before if self.crooked else Fraction(0)

    def span(self, run: str, end: str) -> Fraction:
        """From wall to wall along a run, at one end; in a grid along the walls, along the wall."""
        if self.followed is not None and self.crooked is not None:
            return self.crooked.lengths[wall_along(run, end)]
        return self.crooked.runs[run, end].span if self.crooked else self.spans[run].at_start

    def wall_before(self, run: str, end: str) -> Fraction:
        """How far the wall that strings go along starts before that line; in a grid along walls."""
        if self.followed is not None:
            return -self._wall_along(run, end)[0]
        return self.before(run, end)

    def level(self, run: str, end: str) -> Fraction:
        """How much of a way from the start wall, at one end, goes along the run."""
        if self.followed is None:
            return Fraction(1)
        start, stop = self._wall_along(run, end)
        return (stop - start) / self.span(run, end)

    def _wall_along(self, run: str, end: str) -> tuple[Fraction, Fraction]:
        """Where the wall along a run, at one end, starts and ends along it."""
        along = 0 if run == "length" else 1
        one, other = self.wall_ends(wall_along(run, end))
        return min(one[along], other[along]), max(one[along], other[along])

    def wall_ends(self, wall: str) -> tuple[tuple[Fraction, Fraction], tuple[Fraction, Fraction]]:
        """The corners a wall goes between, clockwise: W1 starts at the datum."""
        number, count = int(wall.removeprefix("W")), len(self.outline)
        return self.outline[(count - number + 1) % count], self.outline[count - number]

    def face_at(self, wall: str, run: str, across: Fraction) -> Fraction:
        """Where a wall's face lies along a run, so far along the other one.

        In a room with other than four walls, the place furthest out that W1 to W4 have.
        """
        if self.outline_facts is not None:
            return Fraction(0) if wall in ("W1", "W4") else self.spans[run].at_start
        along = 0 if run == "length" else 1
        start, end = self.wall_ends(wall)
        share = (across - start[1 - along]) / (end[1 - along] - start[1 - along])
        return start[along] + (end[along] - start[along]) * share

    def unlike(self, run: str, kinds: tuple[str, ...]) -> bool:
        """Whether marks of some kinds differ from one end of a run to the other."""
        one, other = (
            {mark for mark in self.marks.get((run, end), ()) if mark.kind in kinds}
            for end in ("start", "end")
        )
        return bool(other) and one != other


def wall_along(run: str, end: str) -> str:
    """The wall that lies along a run at the start or at the end of the other one."""
    walls = WALLS_OF_RUN["width" if run == "length" else "length"]
    return walls[0 if end == "start" else 1]


def read_facts(layout: Mapping[str, object]) -> LayoutFacts:
    """Turn the layout's JSON into what sheets are held against. Errors: `UnexpectedJson`."""
    root = Node(layout, "")
    digest = layout.get("digest", "")
    return replace(
        _of_plan(root),
        digest=digest if isinstance(digest, str) else "",
        title=dict(_title(root["ceiling"])),
        issued=_issued(root["ceiling"]),
        member_profiles=_member_profiles(root),
        backing=read_backing(root),
        panels=read_panels(root),
        pictorial=read_pictorial(root),
        heights=read_heights(root),
        sections=read_sections(root),
        details=read_details(root),
    )


def _of_plan(root: Node) -> LayoutFacts:
    """What plans are held against."""
    ceiling = root["ceiling"]
    beams = list(root["beams"])
    odd = read_outline(root)
    cut = odd.coffers if odd else ()
    unit = ceiling["units"].text
    step = ceiling["mark_to"].text
    return LayoutFacts(
        step_text=step,
        digest="",
        step=ceiling["mark_to"].exact_of(step if " " in step else f"{step} {unit}"),
        spans={run: _line(root["runs"][run]["span"]) for run in WALLS_OF_RUN},
        beams=tuple(_beam(beam) for beam in beams),
        wall_beams=tuple(_wall_beam(beam) for beam in root["wall_beams"]),
        members=tuple(_member(beam) for beam in beams if beam["member"].given),
        coffers=(
            *(_coffer(coffer) for coffer in root["coffers"]),
            *(CofferFacts(each.id, each.row, each.column, each.corners) for each in cut),
        ),
        seen=tuple(_seen(root["mouldings"])),
        marks={
            (marks["run"].text, marks["end"].text): tuple(_mark(mark) for mark in marks["marks"])
            for marks in root["marks"]
        },
        outline=tuple((spot["x"].length, spot["y"].length) for spot in root["outline"]),
        direction=_direction(ceiling),
        openings=(*read_openings(root), *read_cut_openings(root)),
        items=tuple(read_items(root)),
        features=tuple(read_features(root)),
        joists=_joists(ceiling),
        crooked=read_crooked(root),
        followed=read_followed(root),
        outline_facts=odd,
        crown_reach=_crown_reach(root, ceiling),
    )


def _member_profiles(root: Node) -> dict[str, str]:
    """The profile of each beam with a member in it; none where a layout comes without profiles."""
    return {
        beam["id"].text: beam["profile"].text
        for beam in root["beams"]
        if beam["member"].given and beam.has("profile")
    }


def _crown_reach(root: Node, ceiling: Node) -> Fraction:
    """How far crown reaches from a coffer's side: with what lies behind it, and half of its fit."""
    crown = root["mouldings"]["crown"]
    if not crown.given or not crown.has("projection"):
        return Fraction(0)
    asked = ceiling["crown"]
    fit = asked["fit_total"].exact_of(asked["fit_total"].text) / 2
    flats = ceiling["flat_mouldings"] if ceiling.has("flat_mouldings") else ()
    behind = (
        each["thickness"].exact_of(each["thickness"].text)
        for each in flats
        if each["at"].text == "ceiling"
    )
    framed = asked["method"].text == "bench_frame"
    return crown["projection"].length + sum(behind) + (fit if framed else 0)


def _title(ceiling: Node) -> Iterator[tuple[str, str]]:
    """What the drawing section says, and the ceiling's name; nothing where there is no section."""
    if not ceiling.has("drawing"):
        return
    yield "ceiling", ceiling["name"].text
    for name in ("owner", "number", "date", "status", "creator", "approver", "revision"):
        yield name, ceiling["drawing"][name].text


def _joists(ceiling: Node) -> JoistFacts | None:
    if not ceiling.has("room") or not ceiling["room"].has("joists"):
        return None
    node = ceiling["room"]["joists"]
    places = {name: node[name].exact_of(node[name].text) for name in ("spacing", "first")}
    return JoistFacts(node["parallel_to"].text, places["spacing"], places["first"])


def _direction(ceiling: Node) -> str:
    """The run that boards or grain lie along; empty where nothing is said of one."""
    names = ("parallel_to", "grain") if ceiling.has("panel") else ()
    return next((ceiling["panel"][n].text for n in names if ceiling["panel"].has(n)), "")


def _line(node: Node) -> Line:
    return Line(node["at_start"].length, node["at_end"].length)


def _beam(node: Node) -> BeamFacts:
    return BeamFacts(
        node["id"].text,
        node["on"].text,
        _line(node["near"]),
        _line(node["far"]),
        _line(node["center"]),
        pieces=_pieces(node),
    )


def _pieces(node: Node) -> tuple[tuple[Fraction, Fraction], ...]:
    return tuple((piece["start"].length, piece["end"].length) for piece in node["pieces"])


def _wall_beam(node: Node) -> BeamFacts:
    near, far = _line(node["near"]), _line(node["far"])
    return BeamFacts(
        node["id"].text,
        node["on"].text,
        near,
        far,
        _middle(near, far),
        node["looks_as" if node.has("looks_as") else "wall"].text,
        _pieces(node),
    )


def _middle(near: Line, far: Line) -> Line:
    return Line((near.at_start + far.at_start) / 2, (near.at_end + far.at_end) / 2)


def _member(beam: Node) -> BeamFacts:
    node = beam["member"]
    near, far = _line(node["near"]), _line(node["far"])
    return BeamFacts(
        node["name"].text,
        beam["on"].text,
        near,
        far,
        _middle(near, far),
        pieces=((node["start"].length, node["end"].length),),
    )


def _coffer(node: Node) -> CofferFacts:
    corners = tuple((corner["x"].length, corner["y"].length) for corner in node["corners"])
    row, column = (str(node[name].value) for name in ("row", "column"))
    return CofferFacts(node["id"].text, row, column, corners)


def _seen(mouldings: Node) -> Iterator[SeenFacts]:
    if not mouldings["crown"].given:
        return
    for trim in mouldings["coffers"]:
        length, width = trim["seen_length"].length, trim["seen_width"].length
        yield from (SeenFacts(coffer.text, length, width) for coffer in trim["coffers"])


def _mark(node: Node) -> MarkFacts:
    exact, mark = node["exact"].length, node["mark"].length
    return MarkFacts(node["kind"].text, node["of"].text, node["side"].text, mark, exact)


def _issued(ceiling: Node) -> tuple[str, ...]:
    """The numbers of the sheets the set is to have; none where a layout comes without its spec."""
    if not ceiling.has("drawing"):
        return ()
    return tuple(number.text for number in ceiling["drawing"]["sheets"])
