"""Changes as RFC 7396 has them: its own examples, and where a fault of the result lands."""

import pytest

from lacunar.exchange.merge_patch import landed, merged

# RFC 7396, appendix A: original, patch, result.
EXAMPLES = [
    ({"a": "b"}, {"a": "c"}, {"a": "c"}),
    ({"a": "b"}, {"b": "c"}, {"a": "b", "b": "c"}),
    ({"a": "b"}, {"a": None}, {}),
    ({"a": "b", "b": "c"}, {"a": None}, {"b": "c"}),
    ({"a": ["b"]}, {"a": "c"}, {"a": "c"}),
    ({"a": "c"}, {"a": ["b"]}, {"a": ["b"]}),
    ({"a": {"b": "c"}}, {"a": {"b": "d", "c": None}}, {"a": {"b": "d"}}),
    ({"a": [{"b": "c"}]}, {"a": [1]}, {"a": [1]}),
    (["a", "b"], ["c", "d"], ["c", "d"]),
    ({"a": "b"}, ["c"], ["c"]),
    ({"a": "foo"}, None, None),
    ({"a": "foo"}, "bar", "bar"),
    ({"e": None}, {"a": 1}, {"e": None, "a": 1}),
    ([1, 2], {"a": "b", "c": None}, {"a": "b"}),
    ({}, {"a": {"bb": {"ccc": None}}}, {"a": {"bb": {}}}),
]


@pytest.mark.parametrize(("original", "patch", "result"), EXAMPLES)
def test_the_examples_of_the_standard(original, patch, result):
    before = repr(original)
    assert merged(original, patch) == result
    assert repr(original) == before


@pytest.mark.parametrize(
    ("pointer", "place"),
    [
        ("/crown/face", "/crown/face"),
        ("/crown/method", "/crown"),
        ("/room", ""),
        ("", ""),
        ("/rows/1/a~1b", "/rows/1/a~1b"),
        ("/rows/2", "/rows"),
        ("/rows/-1", "/rows"),
    ],
)
def test_a_fault_lands_as_near_as_there_is_a_change(pointer: str, place: str):
    changes = {"crown": {"face": 3}, "rows": [1, {"a/b": 2}]}
    assert landed(changes, pointer) == place
