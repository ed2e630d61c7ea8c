"""What the README says the command does is what it does."""

import re
from pathlib import Path

from tests.cli.command import lacunar

README = (Path(__file__).parents[2] / "README.md").read_text()


def test_the_first_ceiling_gives_the_files_that_are_named(tmp_path):
    shown = re.search(
        r"\$ cat den\.json\n(.+)\n\n\$ \S+ draw den\.json (.+)\n((?:.+\n)+)```", README
    )
    spec = tmp_path / "den.json"
    spec.write_text(shown[1])
    asked = shown[2].replace("sheets", str(tmp_path / "sheets")).split()
    outcome = lacunar("draw", spec, *asked, "--quiet")
    assert outcome.code == 0, outcome.err
    assert outcome.out.replace(f"{tmp_path}/", "") == shown[3]


def test_the_spec_that_is_shown_can_be_built_and_drawn_without_a_finding():
    shown = re.search(r"## What a spec can say\n\n```json\n(.+?)```", README, re.DOTALL)
    outcome = lacunar("check", "-", "--drawings", document=shown[1].encode())
    assert (outcome.code, outcome.out) == (0, ""), outcome.err


def test_the_price_list_that_is_shown_prices_a_ceiling(tmp_path):
    shown = re.search(r"## What a price list can say\n\n```json\n(.+?)```", README, re.DOTALL)
    prices = tmp_path / "prices.json"
    prices.write_text(shown[1])
    room = Path(__file__).parents[2] / "examples" / "ceilings" / "music_room.json"
    outcome = lacunar("estimate", room, "--prices", prices, "--table", "lines")
    assert outcome.code == 0, outcome.err
    assert '"Crossings",16,"joint",7.2,56,403.2,' in outcome.out
