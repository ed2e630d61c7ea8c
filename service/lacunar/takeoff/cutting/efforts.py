"""What each word for effort stands for, in counts."""

from collections.abc import Mapping

from lacunar.takeoff.cutting.asked import EffortWord
from lacunar.takeoff.cutting.task import QUICK, THOROUGH, USUAL, Effort

EFFORTS: Mapping[EffortWord, Effort] = {
    EffortWord.QUICK: QUICK,
    EffortWord.USUAL: USUAL,
    EffortWord.THOROUGH: THOROUGH,
}
