"""What faults of flat beams and of members mean, and what to do about them."""

from lacunar.model.fault_meaning import FaultMeaning

PROFILE_FAULTS = {
    "not_of_this_profile": FaultMeaning(
        "Not of this profile",
        "Something is given that only beams of the other profile have.",
        "Leave it out, or set the family's profile to the other one.",
    ),
    "edge_of_lone_board": FaultMeaning(
        "Edge of a lone board",
        "A flat beam of one board has no second board for a reveal or overhang.",
        "Leave the reveal or overhang out, or give an upper board.",
    ),
    "flat_beam_hides_no_member": FaultMeaning(
        "Flat beam about a member",
        "A member hangs below the ceiling where the beams are flat boards.",
        "Build the family that divides the member's run as boxes.",
    ),
    "seat_needs_backing": FaultMeaning(
        "Seat needs backing",
        "Panels are to go up between backing and sides, and flat beams have neither.",
        "Seat the panels above the backing or between the sides.",
    ),
    "flat_beams_unlike_depth": FaultMeaning(
        "Flat beams of unlike depth",
        "Equal depth is asked for, and flat beams are only as deep as their boards.",
        "Ask for stepped depth, or take boards that come to the same depth.",
    ),
    "no_board_between_edges": FaultMeaning(
        "No board between the edges",
        "Reveals or overhangs take up the whole of a flat beam's narrower board.",
        "Ask for less reveal or overhang, or for wider beams.",
    ),
    "panel_hides_flat_beams": FaultMeaning(
        "Panel hides flat beams",
        "Panels between flat beams are as thick as the beams.",
        "Take thinner panels or an upper board, or seat the panels above the beams.",
    ),
    "beam_deeper_than_casing": FaultMeaning(
        "Beam deeper than a casing",
        "A beam ends at the casing of a member and would hang open below it.",
        "Let all beams be equally deep, or make the beams shallower than the casing.",
    ),
    "board_longer_than_stock": FaultMeaning(
        "Board longer than its stock",
        "A board of a beam is longer than its stock, with no place to part it out of sight.",
        "Give longer stock, or allow scarfs.",
    ),
    "sides_between_mitred_bottoms": FaultMeaning(
        "Sides between mitred bottoms",
        "Bottoms are to be mitred where beams cross, and sides that run past lie between them.",
        "Cut the sides per coffer, set the bottoms under the sides, or butt the bottoms.",
    ),
    "member_extent_outside_room": FaultMeaning(
        "Member's ends outside the room",
        "A member's start and end do not lie in order between the walls.",
        "Measure both from the datum along the other run.",
    ),
}
