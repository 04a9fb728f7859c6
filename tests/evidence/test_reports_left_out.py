"""What of a package's reports nobody can tell by the package alone is said to be so, and breaks nothing."""

import json
from pathlib import Path

from inspect_app.evidence.fact import FAILS, UNKNOWN
from tests.evidence.attacks.found import trust
from tests.evidence.attacks.on_reports import SECOND, countersigned, placed
from tests.evidence.packed import bagged, fitted, other, record, report, sound, spelled, told

THIRD = SECOND.replace("2", "3")


def found(files, folder: Path):
    return other(told(files, folder, *trust())).get("reports_complete")


def test_a_number_left_out_below_the_last_may_be_a_report_that_was_taken_out(tmp_path: Path):
    kept = {name: data for name, data in sound().items() if name != SECOND}
    files = bagged(fitted(kept | {THIRD: report(record(), 3, 1)}))
    assert found(files, tmp_path) == (UNKNOWN, "number_left_out")


def test_a_report_that_the_package_itself_says_is_gone_is_not_passed_over(tmp_path: Path):
    said = json.loads(sound()["data/package.json"])
    said |= {"missing_reports": [3], "counts": said["counts"] | {"missing_reports": 1}}
    assert found(bagged(dict(sound()) | {"data/package.json": spelled(said)}), tmp_path) == (UNKNOWN, "number_left_out")


def test_a_countersignature_that_the_server_does_not_state_may_be_anybody_s(tmp_path: Path):
    assert found(placed(countersigned(), dict(sound())), tmp_path) == (UNKNOWN, "countersignature_unstated")


def test_before_the_first_report_the_seal_s_fingerprint_alone_makes_no_other_server_of_the_true_one(tmp_path: Path):
    files = bagged(fitted({name: data for name, data in sound().items() if "/reports/" not in name}))
    seal, server = trust()
    facts = [other(told(files, tmp_path / str(n), *given)).get("server_known")
             for n, given in enumerate([(seal,), (seal, server), ("0" * 64,)])]  # fmt: skip
    assert facts == [(UNKNOWN, "no_fingerprint_given"), None, (FAILS, "other_server")]


def test_contents_of_another_shape_are_an_answer_and_no_end_of_it(tmp_path: Path):
    for n, replaced in enumerate(([1], {"n": 1}, True, 1.0, "1")):
        files = placed(report(record(), 2, replaced), dict(sound()))
        assert found(files, tmp_path / str(n)) == (FAILS, "report_missing")
    files = placed(report(record(), True), dict(sound()))  # type: ignore[arg-type]
    assert found(files, tmp_path / "number") == (FAILS, "report_misnamed")
