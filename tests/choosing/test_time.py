"""A search takes about as long as the layouts it makes, measured in the same run."""

from tests.bench.options import ROOMS, measured


def test_a_search_takes_no_longer_than_its_layouts_with_their_take_offs():
    """Runs, comparing and the crown's plans together are little beside laying out.

    The ratio is of CPU time, so that other work on the machine does not matter; a layout is read,
    laid out and taken off whole as in any other request.
    """
    found = measured(ROOMS["family room"])
    assert found.laid_out == 24
    assert found.layouts_worth < 1.5 * found.laid_out
    assert found.runs < 8 * found.layout
