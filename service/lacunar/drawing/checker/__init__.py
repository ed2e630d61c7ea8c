"""The plan checker: a second pair of eyes on every sheet, before anyone cuts by it.

Comes in: the SVG text of a set of sheets as emitted, the layout as the JSON that a caller would
get, that of the take-off and of the material list where sheets tell of them, and the typeface's
widths. Goes out: findings, each under the number of the point it fails.
Must not happen here: any look at views, composition, layout or model. What the checker knows about
a sheet it has read off the sheet; what it holds the sheet against it has read from the JSON.
"""

from lacunar.drawing.checker.points import check_set
from lacunar.drawing.checker.records import Finding

__all__ = ["Finding", "check_set"]
