"""`lacunar draw` in formats other than the usual two."""

import io
import json
import subprocess
import sys
from pathlib import Path

import ezdxf
import PIL.Image
import pypdfium2
import pytest

from tests.cli.command import lacunar

EXAMPLE = Path(__file__).parents[2] / "examples" / "ceilings" / "music_room.json"


@pytest.fixture(scope="module")
def music_room(tmp_path_factory):
    """The example with its plans alone: no test here needs a whole set."""
    spec = json.loads(EXAMPLE.read_text())
    spec["drawing"]["sheets"] = ["Z-101", "Z-102"]
    path = tmp_path_factory.mktemp("spec") / "music_room.json"
    path.write_text(json.dumps(spec))
    return path


def test_each_sheet_is_a_picture_and_a_drawing_where_asked(music_room, tmp_path):
    asked = ("--format", "png", "--format", "dxf", "--dpi", "30")
    outcome = lacunar("draw", music_room, "--out", tmp_path, "--quiet", *asked)
    assert outcome.code == 0, outcome.err
    names = {path.name for path in tmp_path.iterdir()}
    stems = {name.rpartition(".")[0] for name in names}
    assert {"music_room-Z-101", "music_room-Z-102"} <= stems
    assert names == {f"{stem}.{kind}" for stem in stems for kind in ("png", "dxf")}
    picture = PIL.Image.open(io.BytesIO((tmp_path / "music_room-Z-101.png").read_bytes()))
    assert picture.size == pytest.approx((17 * 30, 11 * 30), abs=1)
    document = ezdxf.readfile(tmp_path / "music_room-Z-101.dxf")
    assert document.layout_names_in_taborder() == ["Model", "Z-101"]


def test_unless_asked_there_are_neither(music_room, tmp_path):
    assert lacunar("draw", music_room, "--out", tmp_path, "--quiet").code == 0
    assert {path.suffix for path in tmp_path.iterdir()} == {".svg", ".pdf"}


@pytest.mark.parametrize("dpi", ["19", "601", "fine"])
def test_a_resolution_that_is_none_is_wrong_usage(music_room, tmp_path, dpi):
    asked = ("--format", "png", "--dpi", dpi)
    assert lacunar("draw", music_room, "--out", tmp_path, *asked).code == 2


def test_too_large_a_picture_is_a_fault_that_names_what_would_do(music_room, tmp_path):
    asked = ("--format", "png", "--dpi", "500")
    outcome = lacunar("draw", music_room, "--out", tmp_path, "--quiet", *asked)
    assert outcome.code == 1
    # 17 in x 11 in x 462 x 462 is 39.9 million, 463 x 463 is 40.1 million.
    assert "at most 462 dpi" in outcome.err
    assert not list(tmp_path.iterdir())


def test_what_is_not_painted_is_not_loaded(music_room, tmp_path):
    script = (
        "import sys; from lacunar.cli.main import main; code = main(sys.argv[1:]);"
        "loaded = {name.split('.')[0] for name in sys.modules};"
        "print(sorted(loaded & {'ezdxf', 'pypdfium2'}), file=sys.stderr); sys.exit(code)"
    )
    for formats, loaded in (
        (["svg"], "[]"),
        (["svg", "pdf"], "[]"),
        (["dxf"], "['ezdxf']"),
        (["png"], "['pypdfium2']"),
    ):
        asked = [word for one in formats for word in ("--format", one)]
        command = [sys.executable, "-c", script, "draw", str(music_room), "--out", str(tmp_path)]
        done = subprocess.run(
            [*command, "--quiet", "--dpi", "20", *asked], capture_output=True, text=True, check=True
        )
        assert done.stderr.splitlines()[-1] == loaded


def test_a_pdf_names_the_set_and_labels_its_pages_by_their_sheets(music_room, tmp_path):
    assert lacunar("draw", music_room, "--out", tmp_path, "--quiet").code == 0
    document = pypdfium2.PdfDocument(tmp_path / "music_room.pdf")
    name = json.loads(music_room.read_text())["name"]
    title = document.get_metadata_value("Title")
    assert title.startswith(name)
    # A set of plans, tables and poles is none of them alone.
    assert "plan" not in title.removeprefix(name)
    labels = [document.get_page_label(page) for page in range(len(document))]
    svgs = {path.stem.removeprefix("music_room-") for path in tmp_path.glob("*.svg")}
    assert set(labels) == svgs
    assert len(labels) == len(svgs)
    marked = [mark.get_title().split()[0] for mark in document.get_toc()]
    assert marked == labels
