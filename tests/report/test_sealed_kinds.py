"""Each kind of report, laid out, sealed, time-stamped and countersigned, in both languages, judged by pdfsig, qpdf."""

import io
import subprocess

import pytest

from inspect_app.evidence.enclosure import enclosures
from inspect_app.evidence.fact import FAILS, HOLDS
from inspect_app.evidence.verify import verify
from inspect_app.record.scope import FIELDS
from inspect_app.report.authority import Authority
from inspect_app.report.contents import contents_bytes, report_contents
from inspect_app.report.pages.voice import Voice
from inspect_app.report.seal import countersign, seal
from inspect_app.report.seal_box import box_of
from tests.evidence.sealed import RECORD, WHEN, key
from tests.record.rhythm_sample import INSPECTOR, PEOPLE
from tests.report.laid_out import FONTS, WORDS, lay_out
from tests.report.sample import DEFINITIONS, OPTIONS, log
from tests.report.test_survey import SCOPE, site
from tests.report.time_authority import serving

BOXES = ["Countersignature", "Countersignature2", "Countersignature3"]


@pytest.fixture(scope="module")
def made():
    """A job with a lot of work, an audit of it, a walk, findings and a survey."""
    site_of_all = site()
    site_of_all.audit = site_of_all.plan(1, 10, kid=INSPECTOR, purpose="audit")
    return site_of_all


def scope_of(kind, made):
    record = made.record()
    return {"closeout": {"kind": kind}, "survey": SCOPE, "audit": {"kind": kind, "lot": made.audit},
            "walk": {"kind": kind, "walk": next(iter(record["walks"]), None)}}[kind]  # fmt: skip


def sealed_report(kind, made, authority):
    """Its bytes sealed, and the room for its signatures."""
    language = "es" if kind in ("walk", "audit") else "en"
    options = OPTIONS | {"scope": scope_of(kind, made), "language": language}
    contents = report_contents(made.record(), PEOPLE, DEFINITIONS, log(), {}, options)
    assert contents["kind"] == kind
    pdf, laid = lay_out(contents)
    out, voice = io.BytesIO(), Voice(WORDS, language, "US")
    paint = box_of(FONTS, voice, key("Issuer (invented)"), contents["issued"])
    inside = enclosures(contents_bytes(contents), RECORD.signed)
    seal(io.BytesIO(pdf), out, key("Issuer (invented)"), WHEN, laid["seal"], paint, inside, authority)
    return out.getvalue(), laid["seal"]["boxes"], voice


@pytest.mark.parametrize("kind", FIELDS)
def test_every_kind_of_report_carries_a_seal_and_three_countersignatures_that_pdfsig_takes(kind, made, tmp_path):
    with serving() as server:
        authority = Authority(server.url, 2)
        data, boxes, voice = sealed_report(kind, made, authority)
        assert list(boxes) == ["Seal", *BOXES]
        for box in BOXES:
            own, out = key(f"{box} (invented)"), io.BytesIO()
            paint = box_of(FONTS, voice, own, "2026-11-26T10:00:00.000+00:00", "Read and agreed ·")
            countersign(io.BytesIO(data), out, own, WHEN, box, boxes[box], paint, authority, "Read and agreed")
            assert out.getvalue().startswith(data)
            data = out.getvalue()
    (tmp_path / "r.pdf").write_bytes(data)
    told = subprocess.run(["pdfsig", str(tmp_path / "r.pdf")], capture_output=True, text=True, check=False).stdout
    assert told.count("Signature is Valid") == 4 and told.count("  - Total document signed") == 1
    assert told.count("ETSI.CAdES.detached") == 4
    checked = subprocess.run(["qpdf", "--check", str(tmp_path / "r.pdf")], capture_output=True, check=False)
    assert checked.returncode == 0, checked.stdout + checked.stderr
    facts = [fact for fact in verify(data).facts if fact.name in (
        "sealed", "seal_intact", "container_intact", "only_allowed_changes", "covers_file", "nothing_appended",
        "contents_match", "time_stamped")]  # fmt: skip
    assert len(facts) == 4 * 4 + 4 and {fact.status for fact in facts} == {HOLDS}
    wrong = {fact.name for fact in verify(data + b"\n%%EOF\n").facts if fact.status == FAILS}
    assert wrong & {"nothing_appended", "is_pdf"}
