"""``seamwalk calc layout FILE``: what an area's file gives in the shell, and what is wrong with it."""

import json

import pytest

from inspect_app.command_line import main
from tests.rules.roofs import HIP, assembly, hole, q, zone_map


def laid(told, folder, capsys, *options, code=0):
    file = folder / "area.json"
    file.write_text(told if isinstance(told, str) else json.dumps(told), "utf-8")
    assert main(["calc", "layout", str(file), *options]) == code
    return capsys.readouterr()


def test_the_numbers_of_a_hip_plane(tmp_path, capsys):
    """Ten panels of 10 ft, then 10, 8, 6, 4, 2; fourteen seams, 120 ft of them, a station a foot."""
    told = json.loads(laid(HIP | {"assembly": assembly(field="12")}, tmp_path, capsys, "--json").out)
    assert (told["panels"], told["longest"], told["stations"], told["unit"]) == (15, 10, {"field": 120}, "ft")
    assert told["lengths"][:2] == [{"from": 1, "to": 11, "length": 10}, {"from": 12, "to": 12, "length": 8}]
    assert told["values"]["seam_length"] == {"value": pytest.approx(120), "unit": "ft"}
    assert told["values"]["stations"]["field"] == {"value": 120, "unit": ""} and told["faults"] == []
    page = laid({"area": HIP, "assembly": assembly(field="12")}, tmp_path, capsys, "--lang", "en").out
    assert "panels 1 to 11: 10\u00a0ft" in page and "panel 12: 8\u00a0ft" in page and "field: 120" in page


def test_bare_numbers_are_read_as_they_were_typed(tmp_path, capsys):
    told = json.dumps(HIP | {"assembly": {"zones": [{"name": "field", "spacing": {"value": 12, "unit": "in"}}]}})
    bare = told.replace('"30"', "30").replace('"value": "2"', '"value": 2.0')
    assert bare != told
    assert json.loads(laid(bare, tmp_path, capsys, "--json").out)["stations"] == {"field": 120}


def test_what_is_wrong_is_said_and_what_can_be_counted_is_counted(tmp_path, capsys):
    told = HIP | {"assembly": assembly(field="12"), "openings": [hole((40, 1), (41, 1), (41, 2))],
                  "zone_map": zone_map(eave=-1)}  # fmt: skip
    said = laid(told, tmp_path, capsys, "--lang", "es")
    assert "paneles: 15" in said.out and "la abertura curb no está dentro" in said.err
    assert "zone_map.widths.eave" in said.err and len(said.err.splitlines()) == 2


@pytest.mark.parametrize(
    ("told", "said"),
    [(HIP | {"coverage": q("0", "in")}, "coverage: 0 in"), ("[1, 2", "area.json"), ("[]", "area"),
     ("[" * 100000, "area.json"), ({"area": None}, "area")],
)  # fmt: skip
def test_what_cannot_be_laid_out_is_refused_with_its_field(told, said, tmp_path, capsys):
    shown = laid(told, tmp_path, capsys, code=2)
    assert said in shown.err and shown.out == ""


def test_a_file_that_is_not_there_or_not_named_is_said(tmp_path, capsys):
    assert main(["calc", "layout", str(tmp_path / "none.json")]) == 2
    assert "none.json" in capsys.readouterr().err
    assert main(["calc", "layout", "--lang", "en"]) == 2
    assert "Give one file" in capsys.readouterr().err
