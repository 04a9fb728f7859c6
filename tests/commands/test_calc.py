"""``seamwalk calc`` as people and outside checks call it: every rule, both systems, every way to spell an input."""

import json
import math
import re
import shlex

import pytest

from inspect_app.command_line import main
from inspect_app.commands.calc_names import EXAMPLES
from inspect_app.commands.calc_page import by_tape
from inspect_app.rules.rulebook import names

TRAVELLER = (
    'window distance="40 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=70F slot=1in shank=0.190in'
)


def calc(line, capsys, code=0):
    """What the shell prints for ``seamwalk calc LINE``: standard output, standard error."""
    assert main(["calc", *shlex.split(line)]) == code
    return capsys.readouterr()


def values(line, capsys):
    told = json.loads(calc(f"{line} --json", capsys).out)
    return {name: (one["value"], one["unit"]) for name, one in told["values"].items()}, told


def test_the_traveller_through_the_numbers(capsys):
    """First principles, no published rule: steel, 40 ft, 70 °F in −20…180 °F, 1 in slot, 0.190 in shank."""
    found, told = values(TRAVELLER, capsys)
    expected = {"grow": 0.3432, "shrink": 0.2808, "play": 0.405, "low": -0.0618, "high": 0.1242, "aim": 0.0312}
    assert found == {name: (pytest.approx(value, abs=1e-9), "in") for name, value in expected.items()}
    assert told["verdict"] == "pass" and told["formula"] and "first principles" in told["source"].lower()


def test_the_same_traveller_in_si_and_in_either_answer_s_system(capsys):
    metric = ("window distance=12.192m expansion=11.7e-6/K metal_low=-28.88888888888889C metal_high=82.22222222222222C "
              "metal_now=21.11111111111111C slot=25.4mm shank=4.826mm")  # fmt: skip
    found, _ = values(metric, capsys)
    assert found["aim"] == (pytest.approx(0.0312 * 25.4, abs=1e-9), "mm")
    assert values(f"{metric} units=US", capsys)[0]["aim"] == (pytest.approx(0.0312, abs=1e-9), "in")
    assert values(f"{TRAVELLER} units=SI", capsys)[0]["high"] == (pytest.approx(0.1242 * 25.4, abs=1e-9), "mm")


@pytest.mark.parametrize(
    ("line", "inches"),
    [  # AISC coefficient 6.5e-6/°F; ranges of UFGS-07416A 1.4.6 and UFC 3-110-03 ch. 4; 5/8 in is common practice
        ('movement distance="100 ft" expansion=6.5e-6/F change=80F', 0.624),
        ("movement length=100ft expansion=6.5e-6/F change=160F", 1.248),
        ("movement distance=1200in expansion=6.5e-6/F metal_low=-20F metal_high=180F", 1.56),
        ("movement distance=100' expansion=6.5e-6/F delta_t=220F", 1.716),
        ('movement distance="100 ft" expansion=1.17e-5/K change=88.88888888888889K', 1.248),
    ],
)
def test_movement_however_it_is_typed(line, inches, capsys):
    found, told = values(line.replace("'", "ft"), capsys)
    assert found["movement"] == (pytest.approx(inches, abs=1e-9), "in")
    assert "verdict" not in told


def test_a_difference_never_meets_the_offset_of_32(capsys):
    """200 °F of difference is 111.1 K; two government guides print 93 and 104 °C for 200 and 220."""
    found, _ = values("movement distance=10m expansion=12e-6/K change=200F", capsys)
    assert found["movement"] == (pytest.approx(10_000 * 12e-6 * 200 * 5 / 9, abs=1e-9), "mm")


@pytest.mark.parametrize(
    ("typed", "rise"),
    [("slope=3:12", 3), ("slope=3/12", 3), ('slope="3 in 12"', 3), ("slope=25%", 3), ("slope=14.036243467926479deg", 3),
     ("rise=3", 3), ("percent=25", 3), ("degrees=45", 12), ("rise=4in run=16in", 3), ("slope=1:2", 6)],
)  # fmt: skip
def test_a_slope_however_it_is_typed(typed, rise, capsys):
    found, _ = values(f"slope {typed}", capsys)
    assert found["rise"] == (pytest.approx(rise, abs=1e-9), "/12")
    assert found["degrees"] == (pytest.approx(math.degrees(math.atan(rise / 12)), abs=1e-9), "deg")


def test_the_code_s_rounded_percents_let_nothing_through(capsys):
    """IBC 1507.4.2 prints 1/4:12 as 2 percent; it is 2.083."""
    _, told = values("slope slope=2% minimum=1/4:12", capsys)
    assert (told["verdict"], told["reason_code"]) == ("fail", "slope_too_low") and told["reason"]


def test_a_gauge_number_alone_is_taken_as_msg_and_said_so(capsys):
    """22 gauge is 0.0299 in MSG, 0.03125 in the statute, 0.0336 galvanized (from memory), 0.0283 of a framing mil."""
    found, told = values("thickness gauge=22", capsys)
    assert found["nominal"] == (0.0299, "in") and told["inputs"]["system"] == "MSG"


def test_gauges_of_a_system_give_nominal_and_minimum(capsys):
    """CSSBI Facts 10-12, table 1."""
    found, _ = values('thickness gauge="24 MSG"', capsys)
    assert found == {"nominal": (0.0239, "in"), "minimum": (0.0227, "in")}
    assert values("thickness gauge=24ga system=msg", capsys)[0] == found
    _, told = values("thickness gauge=24 system=MSG reading=0.0230in coated=yes", capsys)
    assert (told["verdict"], told["reason_code"]) == ("not_determinable", "coating_unknown")


def test_the_widest_of_several_gaps_decides(capsys):
    found, told = values('spacing gaps="11.5in, 1ft, 1ft1in" limit=12in', capsys)
    assert found["longest"] == (13, "in") and found["limit"] == (12, "in") and told["verdict"] == "fail"


def test_every_rule_s_own_example_is_computed_and_its_page_lists_every_input(capsys):
    assert set(EXAMPLES) == set(names())
    for name, example in EXAMPLES.items():
        page = calc(name, capsys).out
        assert example in page
        told = json.loads(calc(f"{name} {example} --json", capsys).out)
        numbers = [one["value"] for one in told["values"].values() if not isinstance(one["value"], (str, list))]
        assert told["values"] and all(math.isfinite(one) for one in numbers)
        assert {"rule", "values", "formula", "inputs", "source"} <= set(told)
        assert told["formula"] in calc(f"{name} {example}", capsys).out


def test_a_metal_s_name_gives_the_expansion_offered_for_it_and_says_so(capsys):
    found, told = values('movement run="100 ft" metal=steel change=80F', capsys)
    assert found["movement"] == (pytest.approx(0.624), "in")
    assert told["inputs"]["expansion"] == {"value": "0.0000065", "unit": "/F"}
    assert "lead" in calc('movement run="100 ft" metal=lead change=80F', capsys, 2).err


def test_a_spacing_from_tested_points_is_the_next_closer_one_unless_the_approval_interpolates(capsys):
    line = "spacing pressure=85psf tested=24in:60psf,12in:110psf"
    assert values(line, capsys)[0] == {"limit": (12, "in")}
    assert values(f"{line} interpolate=reciprocal", capsys)[0] == {"limit": (pytest.approx(16.0), "in")}
    _, told = values("spacing pressure=111psf tested=24in:60psf,12in:110psf", capsys)
    assert (told["verdict"], told["reason_code"]) == ("not_determinable", "beyond_tested")
    assert "24in-60psf" in calc("spacing pressure=85psf tested=24in-60psf", capsys, 2).err


@pytest.mark.parametrize(("name", "system"), [("galvanized", "GSG"), ("usstandard", "USS"), ("msg", "MSG")])
def test_a_gauge_system_by_its_full_name(name, system, capsys):
    assert values(f"thickness gauge=22 system={name}", capsys)[1]["inputs"]["system"] == system


def test_a_tab_is_reckoned_by_the_rule_of_its_clip(capsys):
    line = 'tab distance="100 ft" expansion=6.5e-6/F metal_low=-20F metal_high=180F metal_now=130F'
    found, _ = values(f"{line} travel_out=1in travel_in=1in", capsys)
    assert [round(found[name][0], 9) for name in ("low", "aim", "high")] == [0.17, 0.39, 0.61]


@pytest.mark.parametrize(
    ("line", "field", "value"),
    [
        ("nope slope=3:12", "rule", "nope"),
        ("slope slope=3", "slope", "3"),
        ("slope slope=3in", "slope", "3 in"),
        ("slope slope=steep", "slope", "steep"),
        ("slope slope=3:12 slope=4:12", "slope", "4:12"),
        ("slope pitch=", "pitch", "pitch="),
        ("slope colour=red", "colour", "red"),
        ("movement distance=40ft expansion=6.5/F change=80F", "expansion", "6.5 /F"),
        ("movement distance=40ft expansion=6.5e-6/F", "change", ""),
        (TRAVELLER.replace("0.190in", "1in"), "shank", "1 in"),
        (TRAVELLER.replace("metal_now=70F", "metal_now=70K"), "metal_now", "70 K"),
        ("movement distance=1/0in expansion=6.5e-6/F change=80F", "distance", "1/0in"),
        (f"movement distance=1/{'9' * 5000}in expansion=6.5e-6/F change=80F", "distance", "1/999"),
        (f"movement distance={'9' * 400}/1in expansion=6.5e-6/F change=80F", "distance", "999"),
        ("slope slope=3:12 units=metric", "units", "METRIC"),
    ],
)
def test_what_cannot_be_judged_is_refused_with_field_value_and_way_out(line, field, value, capsys):
    said = calc(line, capsys, 2)
    assert said.out == "" and len(re.findall(r"[.!]", said.err)) >= 2, said.err
    assert field in said.err and value in said.err
    assert calc(f"{line} --lang es", capsys, 2).err != said.err


def test_calc_speaks_the_language_of_the_machine_or_the_one_asked_for(capsys, monkeypatch):
    monkeypatch.setenv("LC_ALL", "es_MX.UTF-8")
    assert "Movimiento" in calc('movement run="100 ft" metal=steel change=80F', capsys).out
    assert "Movement" in calc('movement run="100 ft" metal=steel change=80F --lang en', capsys).out


@pytest.mark.parametrize("language", ["en", "es"])
def test_without_a_name_it_lists_every_rule_with_what_it_is_and_how_to_go_on(language, capsys):
    said = calc(f"--lang {language}", capsys)
    lines = dict(line.strip().split(": ", 1) for line in said.out.splitlines() if line.startswith("  "))
    assert list(lines) == names() and all(lines.values())
    assert {"en": "Movement", "es": "Movimiento"}[language] in lines["movement"]
    assert "seamwalk calc movement" in said.out and said.err == ""
    assert list(json.loads(calc("--json", capsys).out)["rules"]) == names()


LONGEST = "longest_run expansion=6.5e-6/F metal_low=-20F metal_high=180F slot=1in shank=0.190in"


def test_a_length_of_ten_feet_and_more_is_printed_as_a_tape_shows_it_too(capsys):
    """By hand: (0.81 − 2 × 0.125) / (6.5e-6 × 200) = 430.769 in = 35 ft 10.769 in, 10 3/4 to the nearest 1/16."""
    text = calc(f"{LONGEST} offset_error=1/8in", capsys).out.replace("\u00a0", " ")
    assert "430.7692 in, 35 ft 10 3/4 in\n" in text and "215.3846 in, 17 ft 11 3/8 in\n" in text
    told = json.loads(calc(f"{LONGEST} offset_error=1/8in --json", capsys).out)["values"]["aimed"]
    assert told == {"value": pytest.approx(430.7692, abs=1e-4), "unit": "in"}
    assert " ft" not in calc(f"{LONGEST} offset_error=1/8in units=SI", capsys).out.replace("\u00a0", " ")


@pytest.mark.parametrize(
    ("inches", "shown"),
    [(119.99, None), (120, "10 ft"), (120.5, "10 ft 1/2 in"), (131.98, "11 ft"), (133, "11 ft 1 in"),
     (-430.7692, "−35 ft 10 3/4 in")],
)  # fmt: skip
def test_feet_inches_and_sixteenths(inches, shown):
    assert by_tape(inches, "in") == shown and by_tape(inches, "mm") is None


def test_words_and_lists_are_told_as_such_and_whole_numbers_without_a_point(capsys):
    """MIL-STD-105E 4.7.1: 2 of 5 lots in a row."""
    found, told = values("switch history=A,A,R,A,R inspection=normal reduced=allowed", capsys)
    assert found["inspection"] == ("tightened", "") and found["because"] == ("switch_two_not_accepted", "")
    assert "2 of the last 3 lots" in told["reason"] and "verdict" not in told
    page = calc("switch history=A,A,R,A,R inspection=normal --lang es", capsys).out
    assert "(inspección ahora): rigurosa" in page and page.count("2 de los últimos 3 lotes") == 1
    assert values("draw population=60 n=3 seed=00", capsys)[0]["indices"] == ([41, 20, 32], "")
    assert "): 41, 20, 32\n" in calc("draw population=60 n=3 seed=00", capsys).out
    assert "n (look at): 20\n" in calc("plan lot=60 level=II aql=2.5 inspection=normal", capsys).out
