"""Why this machine cannot draw. Each message is one sentence for the person at the terminal."""


class DrawingUnavailable(Exception):
    """Drawings cannot be made here, whatever is on the sheets."""


class CairoMissing(DrawingUnavailable):
    """The cairo library is not on this machine, so no PDF can be painted; SVG still can."""


class WrongFont(DrawingUnavailable):
    """The letters would come out in another font than the one the sheets were measured with."""
