"""What one family of beams takes over from the other."""

from dataclasses import replace

from lacunar.model.spec import BeamsSpec, BoxSpec

# What is taken over is taken over together: a joint with its reveal and overhang, a size with the
# stock that makes it. Half of one family's detail beside half of the other's would be neither.
TAKEN_TOGETHER = (
    ("bottom_joint", "reveal", "overhang"),
    ("sides", "bottom", "backing", "width", "drop"),
    ("allowance",),
)


def lengthwise_as_meant(beams: BeamsSpec) -> BoxSpec:
    """The lengthwise family with what it leaves open taken from the crosswise, group by group."""
    crosswise = beams.crosswise or BoxSpec()
    if beams.lengthwise is None:
        return crosswise
    taken = {
        name: getattr(crosswise, name)
        for group in TAKEN_TOGETHER
        if all(getattr(beams.lengthwise, name) is None for name in group)
        for name in group
    }
    return replace(beams.lengthwise, **taken)
