"""What the faults of mouldings, and of the angles they are cut at, mean."""

from lacunar.model.fault_meaning import FaultMeaning

MOULDING_FAULTS = {
    "angle_too_fine": FaultMeaning(
        "Angle too fine",
        "An angle has more decimals than it is read with.",
        "Write at most 9 decimals.",
    ),
    "angle_out_of_bounds": FaultMeaning(
        "Angle out of bounds",
        "No moulding, saw or corner has an angle like this.",
        "Check the figure; a spring angle is measured from the wall.",
    ),
    "fence_height_alone": FaultMeaning(
        "Height at the fence alone",
        "The tallest crown a saw takes is given, but not how wide the crown's face is.",
        "Give the width of the face too, or leave out the height.",
    ),
    "rake_without_slope": FaultMeaning(
        "Rake without a slope",
        "It is said which way a raked run goes, but not how steep it is.",
        "Give the slope too, or leave out the rake.",
    ),
    "crown_not_sized": FaultMeaning(
        "Crown not sized",
        "Only a drop or only a projection is given, which says nothing without the face.",
        "Give both, or the width of the face.",
    ),
    "crown_face_too_narrow": FaultMeaning(
        "Face of the crown too narrow",
        "A drop or projection is no less than the face is wide, though crown stands aslant.",
        "Give the face as the width across the moulding, from edge to edge.",
    ),
    "crown_sizes_contradict": FaultMeaning(
        "Sizes of the crown contradict",
        "Face, drop and projection are not the sides of one right triangle.",
        "Measure again, or leave out the face.",
    ),
    "spring_changed_too_far": FaultMeaning(
        "Spring changed too far",
        "At the drop or projection asked for, the crown is tipped so far from the spring it is"
        " milled to that its flats open visibly.",
        "Come nearer to the drop and projection it is milled to, or take another crown.",
    ),
    "moulding_without_bearing": FaultMeaning(
        "Moulding without bearing",
        "A moulding reaches past the one it lies on.",
        "Take a wider moulding behind it, or a smaller one on it.",
    ),
    "mouldings_taller_than_side": FaultMeaning(
        "Mouldings taller than the side",
        "The mouldings on a beam's side need more than the side that is exposed.",
        "Take smaller mouldings, or deeper beams.",
    ),
    "mouldings_fill_coffer": FaultMeaning(
        "Mouldings fill the coffer",
        "The mouldings around a coffer meet in its middle.",
        "Take smaller mouldings, or ask for fewer coffers.",
    ),
    "mouth_closed": FaultMeaning(
        "Mouth of a coffer closed",
        "What stands out at the lower edges of the beams closes a coffer from below.",
        "Ask for less overhang, thinner mouldings, or fewer coffers.",
    ),
}
