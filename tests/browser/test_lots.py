"""A lot not accepted and what is done with it, coverage, an audit drawn without signal, and the job's own sampling."""

import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tests.browser import eye
from tests.browser.lots import Crew
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, ready
from tests.browser.walker import Walker

SEND = "async () => { await (await import('/static/sync/engine.js')).sendNow() }"
SEEN = {"snap_closed", "fold_stage", "clip_bulge", "head_marks", "surface", "pinned_signs"}


def person(chromium: Any, roof: Roof, folder: Path, login: str) -> Walker:
    walker = Walker(chromium.new_context(**PHONE).new_page(), roof.url, folder)
    walker.sign_in(login)
    walker.named("job")
    walker.sees('[data-name="fold-lots"]')
    return walker


def at(walker: Walker, roof: Roof, *steps: str) -> None:
    path = "/".join(step.replace("/", "%2F") for step in ("job", roof.job, *steps))
    walker.page.evaluate("(hash) => { location.hash = hash }", f"#/{path}")


def readable(walker: Walker) -> None:
    eye.readable(walker.page)


def settles(holds: Callable[[], bool]) -> bool:
    """Whether it holds within half a minute."""
    for _ in range(900):
        if holds():
            return True
        time.sleep(0.1)
    return False


def test_a_lot_not_accepted_is_decided_with_a_document_and_what_was_put_right_is_drawn_anew(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    crew = Crew(roof, "foreman", 1)
    lot = crew.bad_day()
    office = person(chromium, roof, tmp_path, "office")
    at(office, roof, "lot", lot)
    office.sees('[data-name="decision"][data-state="not_accepted"]:has-text("1 bad of 5 looked at; 0 allowed")')
    office.sees('[data-name="curve"][data-drawn="true"]')
    points = office.page.locator('[data-severity="critical"] [data-name="points"] li').all_inner_texts()
    # (1 - share)^5 = 0.95, 0.5 and 0.1, by hand: 1.0, 12.9 and 36.9 %
    assert [text.split(" bad")[0].split()[-2] for text in points] == ["1", "12.9", "36.9"], points
    office.sees('[data-name="drawn-panel"][data-state="bad"]')
    assert office.page.locator('[data-name="drawn-panel"]').count() == 5
    office.sees(f'[data-name="gone-over"]:has-text("Panel {crew.unseen}")')
    office.choose("disposition", "accept")
    office.page.fill("#in-reason", "The engineer looked at it (invented)")
    sign = office.page.locator('button[data-name="sign-disposition"]')
    assert sign.is_disabled() and "its photo or its reference" in sign.inner_text()
    readable(office)
    office.take("document")
    office.page.reload()
    office.sees('[data-role="document"] img')
    office.named("sign-disposition")
    office.sees('[data-name="disposition"][data-choice="accept"] img')
    assert settles(lambda: bool(roof.record()["lots"][lot]["disposition"]))
    disposition = roof.record()["lots"][lot]["disposition"]
    assert disposition["stands"] and disposition["role"] == "administrator"
    with roof.app.app_context():
        assert settles(lambda: disposition["document"] in roof.parts.reading.photos(roof.job)), "its picture went along"
    covered_unseen_stays(office, roof, crew)
    rework(person(chromium, roof, tmp_path, "foreman"), roof, crew, lot)
    assert office.faults == []


def covered_unseen_stays(walker: Walker, roof: Roof, crew: Crew) -> None:
    """The lot is accepted by its document; a panel that nobody saw is covered unseen all the same."""
    at(walker, roof, "coverage")
    walker.sees(f'[data-name="covered-unseen"]:has-text("Quay slope: panel {crew.unseen}")')
    walker.tap('[data-name="coverage-area"]:has-text("Quay")')
    walker.sees(f'[data-name="run"][data-state="covered_unseen"]:has-text("panel {crew.unseen}")')
    runs = roof.record()["coverage"][crew.areas["Quay slope"]["id"]]["runs"]
    assert walker.page.locator('[data-name="run"]').count() == len(runs) > 3
    shown = walker.page.locator('[data-name="figures"] li').all_inner_texts()
    assert shown[0].split() == ["48", "panels"] and "covered unseen" in shown[1]


def rework(walker: Walker, roof: Roof, crew: Crew, lot: str) -> None:
    at(walker, roof, "lot", lot)
    assert walker.page.locator('[data-name="choose"]').count() == 0, "the technical lead's alone"
    walker.named("draw-rework")
    walker.sees('[data-name="audit-panel"]')
    assert walker.page.locator('[data-name="audit-panel"]').count() == 5
    assert settles(lambda: roof.kinds().count("lot") == 2)
    record = roof.record()
    (new,) = [one for one in record["lots"].values() if one["purpose"] == "rework"]
    assert (new["reworks"], new["id"].split("/")[0] == lot.split("/")[0]) == (lot, False), "a ticket of its own"
    crew.begin(crew.definition, "Quay slope")
    crew.look(new)
    crew.deliver()
    walker.page.evaluate(SEND)
    walker.sees('[data-name="lot"][data-state="accepted"]')
    at(walker, roof, "series")
    assert walker.page.locator('[data-name="series-lot"]').count() == 1, "rework is no lot of the series"
    assert walker.faults == []


@pytest.mark.soak  # minutes of a browser: the suite walks the first of them
def test_an_audit_is_drawn_without_signal_looked_at_by_what_shows_and_compared(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    Crew(roof, "foreman", 1).bad_day()
    inspector = Crew(roof, "inspector", 2)
    walker = person(chromium, roof, tmp_path, "inspector")
    ready(walker)
    roof.stop()
    at(walker, roof, "audit")
    walker.sees('[data-name="audit-plan"]:has-text("5 of 12 panels")')  # MIL-STD-105E: level II, 9 to 15: B, AQL 2.5: C
    readable(walker)
    walker.named("draw-audit")
    walker.sees('[data-name="begin-walk"]')
    assert walker.page.locator('[data-name="audit-panel"][data-state="due"]').count() == 5
    walker.named("begin-walk")
    walker.named("safe")
    walker.page.fill('.stepper[data-name="metal"] input', "74")
    for field, value in (("by", "contact"), ("sky", "clear"), ("wind", "calm"), ("independent", "yes")):
        walker.choose(field, value)
    walker.named("begin")
    walker.tap('[data-name="audit-panel"]')
    walker.sees('[data-name="look"]')
    assert walker.page.locator('[data-name="look"]').count() == 3
    walker.named("covered")
    walker.sees('[data-name="drawn-place"][data-state="covered"]')
    walker.named("look")
    walker.sees('[data-role="where"]')
    assert {one.get_attribute("data-item") for one in walker.page.locator('[data-name="item"]').all()} == SEEN
    walker.named("back-to-walk")
    walker.sees('[data-name="drawn-place"][data-state="open"]')

    roof.start()
    walker.page.evaluate(SEND)
    assert settles(lambda: roof.kinds().count("station") == 17)
    (audit,) = [one for one in roof.record()["lots"].values() if one["purpose"] == "audit"]
    assert (audit["ticket"]["series"], audit["size"], len(audit["placements"])) == ("work", 12, 12)
    inspector.begin(inspector.definition, "Quay slope")
    inspector.look(audit)
    inspector.deliver()
    walker.page.evaluate(SEND)
    at(walker, roof, "audit", audit["id"])
    assert roof.record()["audits"][audit["id"]]["audit"]["n"] == 4, "of the fifth one place could not be seen"
    walker.sees('[data-name="compared"] [data-who="audit"]:has-text("0 bad of 4 drawn panels")')
    walker.sees('[data-who="foreman"]:has-text("1 bad of 5 drawn panels")')
    assert "ranges overlap" in walker.page.inner_text("main")
    assert walker.faults == []


@pytest.mark.soak  # minutes of a browser: the suite walks the first of them
def test_the_office_states_the_job_s_own_sampling_and_the_instruments_leave_it_alone(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    office = person(chromium, roof, tmp_path, "office")
    at(office, roof, "sampling")
    office.sees('[data-sampling="major"] [data-name="comes"] li:has-text("80 panels: look at 5, accept with 0 bad")')
    office.named("own-major")
    office.choose("level-major", "II")
    office.choose("aql-major", "4")
    office.sees('[data-sampling="major"] [data-name="comes"] li:has-text("80 panels: look at 13, accept with 1 bad")')
    office.named("own-nonresponse")
    share = office.page.locator('.stepper[data-name="nonresponse"] input')
    share.fill("5..")
    assert office.page.locator('button[data-name="save-sampling"]').is_disabled()
    share.fill("2.5")
    readable(office)
    office.named("save-sampling")
    office.sees('[data-name="fold-lots"]')
    at(office, roof, "instruments")
    office.named("own-tape")
    office.page.fill("#in-source-tape", "own check (invented)")
    office.named("save-instruments")
    assert settles(lambda: bool(roof.record()["job"]["instruments"]["tape"]["own"]))
    sampling = roof.record()["job"]["sampling"]
    assert sampling["own"] == ["major", "nonresponse"] and sampling["minor"] == {"level": "S-4", "aql": "10"}
    assert (sampling["major"], sampling["nonresponse"]) == ({"level": "II", "aql": "4"}, "0.025")
    at(office, roof, "sampling")
    office.named("ours-major")
    office.named("save-sampling")
    assert settles(lambda: roof.record()["job"]["sampling"]["own"] == ["nonresponse"])
    assert office.faults == []
