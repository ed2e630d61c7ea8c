"""Whether this machine can do all that is promised."""

from lacunar.drawing.painters.cairo_letters import lettering_cairo
from lacunar.drawing.painters.fonts import load_typeface


def prove_ready() -> None:
    """Load the typeface and letter with it in cairo, which is all that a machine may lack.

    Errors: `DrawingUnavailable`, in words for whoever runs the service.
    """
    lettering_cairo(load_typeface())
