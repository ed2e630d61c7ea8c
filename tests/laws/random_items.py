"""Ceiling items and wall features for the specs drawn at random, from a chance of their own."""

from collections.abc import Mapping
from fractions import Fraction
from random import Random

Spec = dict[str, object]

ITEM_SHARE = 0.4
_KINDS = ("light", "fan", "diffuser", "return", "detector", "sprinkler", "speaker", "hatch")
_FEATURES = ("door", "window", "fireplace", "cabinet")


def _written(inches: Fraction) -> str:
    return f"{inches} in"


def random_items(random: Random, spans: Mapping[str, Fraction]) -> list[Spec]:
    """A light in every coffer or none, and up to four single items anywhere in the room."""
    items: list[Spec] = []
    if random.random() < 0.6:
        items.append({"kind": "light", "diameter": _written(Fraction(random.randint(3, 6)))})
    for _ in range(random.randint(0, 4)):
        length, width = (Fraction(random.randint(4, 24)) for _ in spans)
        items.append(
            {
                "kind": random.choice(_KINDS),
                "x": _written(_within(random, spans["length"], length)),
                "y": _written(_within(random, spans["width"], width)),
                "length": _written(length),
                "width": _written(width),
                "clearance": _written(Fraction(random.randint(0, 4))),
                "mobility": random.choice(("fixed", "movable")),
            }
        )
    return items


def _within(random: Random, span: Fraction, size: Fraction) -> Fraction:
    """A center, to a quarter inch, that leaves a wall finish of 1 in at both ends."""
    least, most = (size / 2 + 1) * 4, (span - size / 2 - 3) * 4
    return Fraction(random.randint(int(least) + 1, int(most)), 4)


def random_features(random: Random, spans: Mapping[str, Fraction]) -> list[Spec]:
    """Up to two features at any walls."""
    features: list[Spec] = []
    for _ in range(random.randint(0, 2)):
        wall = random.choice(("W1", "W2", "W3", "W4"))
        along = "width" if wall in ("W1", "W3") else "length"
        width = Fraction(random.randint(18, 60))
        features.append(
            {
                "kind": random.choice(_FEATURES),
                "wall": wall,
                "center": _written(_within(random, spans[along], width)),
                "width": _written(width),
                "head": _written(Fraction(random.randint(60, 100))),
            }
        )
    return features
