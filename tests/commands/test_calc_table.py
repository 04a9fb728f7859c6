"""What the shell promises by name, in US units and in SI, and what it refuses: every rule by a line that people type.

The numbers are those of the published sources and hand calculations in ``tests/vectors``; each line in SI says the same
thing as its line in US units and must give the same answer.
"""

import json
import shlex

import pytest

from inspect_app.command_line import main
from inspect_app.rules.unit import UNITS, change_unit

RANGE = "metal_low=-20F metal_high=180F"
RANGE_SI = "metal_low=-28.8888888889C metal_high=82.2222222222C"
COLD = f"expansion=6.5e-6/F {RANGE} metal_now=70F"
COLD_SI = f"expansion=11.7e-6/K {RANGE_SI} metal_now=21.1111111111C"
HOT = f"expansion=6.5e-6/F {RANGE} metal_now=130F travel_out=1in travel_in=1in"
HOT_SI = f"expansion=11.7e-6/K {RANGE_SI} metal_now=54.4444444444C travel_out=25.4mm travel_in=25.4mm"
SLOT, SLOT_SI = "slot=1in shank=0.190in", "slot=25.4mm shank=4.826mm"
POINTS, POINTS_SI = "24in:60psf,12in:110psf", "609.6mm:2.8728155kPa,304.8mm:5.2668284kPa"

ROWS = [
    ("movement run='100 ft' expansion=6.5e-6/F change=80F", "movement run=30.48m expansion=11.7e-6/K change=44.444444K",
     {"movement": 0.624}, None),
    (f"window distance='40 ft' {COLD} {SLOT}", f"window distance=12.192m {COLD_SI} {SLOT_SI}",
     {"low": -0.0618, "high": 0.1242, "aim": 0.0312, "grow": 0.3432, "shrink": 0.2808, "play": 0.405}, "pass"),
    (f"window run='40 ft' {COLD} {SLOT} offset=0.12in temperature_uncertainty=5F",
     f"window run=12.192m {COLD_SI} {SLOT_SI} offset=3.048mm temperature_uncertainty=2.7777778K", {"bound": 0.0156},
     "too_close"),
    (f"window distance='40 ft' {COLD} {SLOT} hidden_under=0.46in",
     f"window distance=12192mm {COLD_SI} {SLOT_SI} hidden_under=11.684mm", {}, "fail"),
    (f"window distance='40 ft' {COLD} {SLOT} fixed=unknown",
     f"window distance=12.192m {COLD_SI} {SLOT_SI} fixed=unknown",
     {"low": -0.0618, "high": 0.0618}, "pass"),
    (f"tab distance='100 ft' {HOT}", f"tab distance=30.48m {HOT_SI}", {"low": 0.17, "high": 0.61, "aim": 0.39,
     "grow": 0.39, "shrink": 1.17}, None),
    (f"tab distance='100 ft' {HOT} offset=0.39in", f"tab run=30.48m {HOT_SI} offset=9.906mm", {"offset": 0.39}, "pass"),
    (f"tab distance='50 ft' {HOT} fixed=unknown offset=0in", f"tab distance=15.24m {HOT_SI} fixed=unknown offset=0mm",
     {"low": -0.415, "high": 0.415}, "pass"),
    (f"longest_run expansion=6.5e-6/F {RANGE} {SLOT} offset_error=1/8in",
     f"longest_run expansion=11.7e-6/K {RANGE_SI} {SLOT_SI} offset_error=3.175mm",
     {"aimed": 430.7692, "centred": 215.3846}, None),
    (f"longest_run expansion=6.5e-6/F {RANGE} travel_out=1in travel_in=1in offset_error=1/8in",
     f"longest_run expansion=11.7e-6/K {RANGE_SI} travel_out=25.4mm travel_in=25.4mm offset_error=3.175mm",
     {"aimed": 1346.1538, "centred": 673.0769}, None),
    ("slope rise=3 minimum=3:12",
     "slope percent=25 minimum=25%", {"rise": 3, "degrees": 14.0362, "percent": 25}, "pass"),
    ("slope degrees=14 minimum=3:12", "slope degrees=14deg minimum=25%", {"rise": 2.9919}, "fail"),
    (f"end_gap gap=0.5in return=1.5in engagement=0.5in distance='40 ft' {COLD}",
     f"end_gap gap=12.7mm return=38.1mm engagement=12.7mm run=12.192m {COLD_SI}",
     {"low": 0.2808, "high": 0.6568}, "pass"),
    ("end_gap gap=0.25in return=1.5in engagement=0.5in run='40 ft' expansion=6.5e-6/F change=100F",
     "end_gap gap=6.35mm return=38.1mm engagement=12.7mm run=12.192m expansion=11.7e-6/K change=55.5555556K",
     {"low": 0.312, "high": 0.688}, "fail"),
    ("spacing found='11.5in,12.25in' limit=12in", "spacing found=292.1mm,311.15mm limit=30.48cm",
     {"longest": 12.25, "limit": 12}, "fail"),
    ("spacing count=11 length='10 ft' limit=12in", "spacing count=11 over=3.048m limit=304.8mm", {"mean": 12},
     "not_determinable"),
    (f"spacing pressure=85psf tested={POINTS} interpolate=no found=12in",
     f"spacing pressure=4.0697kPa tested={POINTS_SI} interpolate=no found=304.8mm",
     {"limit": 12, "longest": 12}, "pass"),
    (f"spacing pressure=85psf tested={POINTS} interpolate=reciprocal",
     f"spacing pressure=4.06982193kPa tested={POINTS_SI} interpolate=reciprocal", {"limit": 16}, None),
    ("thickness system=msg gauge=24 reading=0.0230in coated=no",
     "thickness system=msg gauge=24 reading=0.5842mm coated=no",
     {"nominal": 0.0239, "minimum": 0.0227, "base": 0.0230}, "pass"),
    ("thickness system=galvanized gauge=22 tested_system=usstandard tested_gauge=22 reading=0.030in coating=0.0036in",
     "thickness system=galvanized gauge=22 tested_system=usstandard tested_gauge=22 reading=0.762mm coating=0.09144mm",
     {"nominal": 0.0336, "tested_nominal": 0.03125, "base": 0.0264}, "fail"),
    ("pull_over thickness=0.0283in diameter=0.340in tensile=33ksi hole=round",
     "pull_over thickness=0.71882mm head=8.636mm tensile=227.527MPa omega=3",
     {"allowable": 158.763, "nominal": 476.289}, None),
    ("pull_over thickness=0.0283in head=0.340in tensile=33ksi hole=slot",
     "pull_over thickness=0.71882mm head=8.636mm tensile=227.527MPa hole=slot", {}, "not_determinable"),
    ("pull_out thickness=0.0283in diameter=0.190in tensile=33ksi hole=round",
     "pull_out thickness=0.71882mm diameter=4.826mm tensile=227.527MPa",
     {"allowable": 50.275, "nominal": 150.825}, None),
    ("withdrawal specific_gravity=0.50 diameter=0.190in penetration=1.5in",
     "withdrawal specific_gravity=0.50 diameter=4.826mm penetration=38.1mm", {"per_length": 135.375, "force": 203.0625},
     None),
    ("head_compared specified=0.430in found=0.340in slot_width=0.22in",
     "head_compared specified=10.922mm found=8.636mm slot_width=5.588mm", {"ratio": 0.39328}, "fail"),
    ("clip_force pressure=45psf basis=asd width=16in spacing=30in fasteners=2",
     "clip_force pressure=2.15461163kPa basis=ASD width=406.4mm spacing=762mm fasteners=2",
     {"force": 150, "ultimate_needed": 337.5}, None),
    ("edge_width least_width='100 ft' height='30 ft' edition='ASCE 7-10'",
     "edge_width least_width=30.48m height=9.144m edition=7-10", {"width": 120}, None),
    ("guard reading=29.9in at_most=30in uncertainty=0.25in rule=simple",
     "guard reading=759.46mm at_most=762mm uncertainty=6.35mm rule=simple", {"margin": 0.1, "risk": 0.211855}, "pass"),
    ("guard reading=29.9in at_most=30in uncertainty=0.25in", "guard reading=759.46mm at_most=762mm uncertainty=6.35mm",
     {}, "too_close"),
    ("count count=1 of=8 at_most=0", "count bad=1 looked_at=8 max=0", {"share": 0.125}, "fail"),
    ("plan lot=1000 level=II aql=1.0 inspection=normal", "plan size=1000 level=ii aql=1% inspection=Normal",
     {"n": 80, "accept": 2, "reject": 3}, None),
    ("zero_plan defective=0.05 confidence=0.95", "zero_plan defective=5% confidence=95%", {"n": 59}, None),
    ("zero_plan defective=5 lot=50 confidence=0.95", "zero_plan share=.1 lot=50 confidence=.95", {"n": 22}, None),
    ("risk n=20 accept=0 share=0.05", "risk n=20 accept=0 share=5%", {"acceptance": 0.35848592}, None),
    ("risk n=8 accept=0 lot=50 defectives=5", "risk n=8 accept=0 lot=50 share=10%", {"acceptance": 0.401493}, None),
    ("share_bound found=7 n=50 confidence=0.95 sides=2", "share_bound count=7 of=50 confidence=95% sides=2",
     {"low": 0.05819170034, "high": 0.26739600250}, None),
    ("lot_bound lot=60 n=5 found=0 confidence=0.95", "lot_bound lot=60 of=5 count=0 confidence=95%",
     {"defectives": 26}, None),
]  # fmt: skip


def told(line, capsys):
    assert main(["calc", *shlex.split(line), "--json"]) == 0, capsys.readouterr().err
    return json.loads(capsys.readouterr().out)


@pytest.mark.parametrize(("line", "metric", "expected", "verdict"), ROWS, ids=[row[0][:60] for row in ROWS])
def test_a_line_gives_what_it_promises_in_either_system(line, metric, expected, verdict, capsys):
    one, other = told(line, capsys), told(metric, capsys)
    for name, number in expected.items():
        assert one["values"][name]["value"] == pytest.approx(number, rel=1e-4, abs=1e-9)
        found = other["values"][name]
        units = one["values"][name]["unit"], found["unit"]
        same = change_unit(found["value"], units[1], units[0]) if units[1] in UNITS else found["value"]
        assert same == pytest.approx(number, rel=2e-4, abs=1e-6)
    assert one.get("verdict") == other.get("verdict") == verdict
    assert {"rule", "values", "formula", "inputs", "source"} <= set(one)


REFUSED = [
    ("movement run=100 expansion=6.5e-6/F change=80F", ["run", "100"]),
    ("movement run=100ft expansion=6.5e-6/F change=80ft", ["change", "80 ft"]),
    ("movement run=40000ft expansion=6.5e-6/F change=80F", ["run", "40000 ft", "0 to 3280.84 ft"]),
    (f"window distance=40ft {COLD} slot=40in shank=0.19in", ["slot", "40 in", "11.81102 in"]),
    (f"tab distance=40ft {HOT} fixed=perhaps", ["fixed", "perhaps"]),
    (f"longest_run {RANGE} {SLOT} expansion=6.5/F offset_error=1/8in", ["expansion", "6.5 /F", "5.555556e-05 /F"]),
    ("slope degrees=95", ["degrees", "95 deg", "85 deg"]),
    ("slope rise=-3", ["rise", "-3.0 /12", "0 to"]),
    ("spacing found=12in,-1in limit=12in", ["found[1]", "-1 in", "0 to"]),
    ("spacing found=12 limit=12in", ["found[0]", "12"]),
    ("thickness system=msg gauge=24 reading=0.023", ["reading", "0.023"]),
    ("thickness system=msg gauge=24 reading=0.5in", ["reading", "0.5 in", "0.3937008 in"]),
    ("pull_out thickness=0.0283in diameter=0.19in tensile=33psf", ["tensile", "33 psf"]),
    ("withdrawal specific_gravity=500 diameter=0.19in penetration=1in", ["specific_gravity", "500", "0.2 to 1.1"]),
    ("withdrawal specific_gravity=0.5 diameter=-0.19in penetration=1in", ["diameter", "-0.19 in", "0 to"]),
    ("head_compared specified=0.43 found=0.34in slot_width=0.22in", ["specified", "0.43"]),
    ("clip_force pressure=45 basis=ASD width=16in spacing=30in fasteners=2", ["pressure", "45"]),
    ("clip_force pressure=45psi basis=ASD width=16in spacing=30in fasteners=2", ["pressure", "45 psi"]),
    ("edge_width least_width=100ft height=30psf edition=7-10", ["height", "30 psf"]),
    ("guard reading=29.9 at_most=30in uncertainty=0.25in", ["reading", "29.9"]),
    ("guard reading=9999m at_most=30in uncertainty=0.25in", ["reading", "9999 m", "1000 m"]),
    ("count count=9 of=8 at_most=0", ["count", "9"]),
    ("plan lot=60 level=IV aql=2.5 inspection=normal", ["level", "IV"]),
    ("plan lot=60 level=II aql=2.4 inspection=normal", ["aql", "2.4", "0.010, 0.015"]),
    ("plan lot=-5 level=II aql=2.5 inspection=normal", ["lot", "-5"]),
    ("risk n=9 accept=0 lot=8 defectives=1", ["n", "9"]),
    ("share_bound of=20 count=21 confidence=95% sides=2", ["count", "21"]),
    ("share_bound of=20 count=1 confidence=100% sides=2", ["confidence", "1"]),
    ("lot_bound lot=5 n=6 found=0 confidence=95%", ["n", "6"]),
    ("draw population=5 n=6 seed=00", ["n", "6"]),
    ("draw population=5 n=5 seed=0g", ["seed", "0g"]),
    ("switch history=A,X inspection=normal", ["history[1]", "X"]),
]


@pytest.mark.parametrize(("line", "named"), REFUSED, ids=[row[0][:60] for row in REFUSED])
def test_a_missing_unit_one_of_another_kind_and_the_absurd_are_refused_by_name(line, named, capsys):
    for language in ("en", "es"):
        assert main(["calc", *shlex.split(line), "--lang", language]) == 2
        said = capsys.readouterr()
        assert said.out == ""
        for one in named if language == "en" else named[:2]:
            assert one in said.err, said.err
