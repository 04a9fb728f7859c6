"""A finding from open to closed on phones without signal, and one accepted by its document and opened again."""

from pathlib import Path
from typing import Any

from tests.browser.lots import Crew
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, arrived, out_of_signal
from tests.browser.test_lots import SEND, at, person, readable, settles
from tests.browser.walker import Walker


def fail_an_item(walker: Walker) -> None:
    walker.begin_walk()
    walker.place("Quay", "12", "7.5", "field")
    walker.named("look")
    walker.sees('[data-role="where"]')
    walker.take("where")
    walker.take("what", -0.38)
    walker.item("fixed_point")
    walker.page.fill("#in-note", "Two rivets at mid-length (invented)")
    walker.named("fail")
    walker.sees('[data-name="back-to-walk"]')


def give_it_to_a_crew(walker: Walker) -> None:
    walker.named("finding")
    walker.sees('[data-name="finding-state"][data-state="open"]')
    assert walker.page.locator("main .pair img").count() == 2
    walker.named("assign")
    walker.tap('fieldset[data-name="by-day"] button')
    walker.choose("cause", "tool_setting")
    walker.page.fill("#in-note", "Bring the short bit")
    walker.named("keep-assignment")
    walker.sees('[data-name="step"][data-kind="assignment"]')


def put_it_right(walker: Walker) -> None:
    """From the crew's list: ticked, then kept, with the first picture faintly over the live one."""
    walker.named("tick")
    walker.page.reload()
    walker.sees('[data-name="task"][data-ticked="true"]')
    walker.named("to-correct")
    walker.sees('[data-name="no-evidence"]')
    keep = walker.page.locator('button[data-name="keep-correction"]')
    assert keep.is_disabled()
    walker.choose("did", "replaced")
    walker.named("open-camera")
    walker.sees('[data-name="live"][data-state="live"] img.veil')
    assert walker.page.evaluate("getComputedStyle(document.querySelector('.veil')).opacity") == "0.35"
    walker.named("stronger")
    assert walker.page.evaluate("getComputedStyle(document.querySelector('.veil')).opacity") == "0.5"
    walker.named("shoot")
    walker.sees('[data-name="shot"] img')
    assert walker.page.locator('[data-name="no-evidence"]').count() == 0
    walker.named("keep-correction")
    walker.sees('[data-name="finding-state"][data-state="corrected"]')


def test_a_finding_is_put_right_without_signal_and_closed_by_somebody_else_only(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    context = chromium.new_context(**PHONE, permissions=["camera"])
    foreman = out_of_signal(context.new_page(), roof, tmp_path)
    fail_an_item(foreman)
    at(foreman, roof, "findings")
    give_it_to_a_crew(foreman)
    finding = foreman.page.evaluate("decodeURIComponent(location.hash.split('/').at(-1))")
    at(foreman, roof, "tomorrow")
    foreman.sees('[data-name="task"]:has-text("Two rivets")')
    put_it_right(foreman)
    foreman.sees('[data-name="no-recheck"]:has-text("somebody else")')
    assert foreman.page.locator('[data-name="recheck"]').count() == 0, "who corrected it is not offered the recheck"
    at(foreman, roof, "recheck", finding)
    foreman.sees('[data-name="no-recheck"]')
    assert foreman.page.locator('[data-name="good"], [data-name="not-good"]').count() == 0

    roof.start()
    assert arrived(roof, "correction")
    (correction,) = roof.record()["findings"][finding]["corrections"]
    with roof.app.app_context():
        assert settles(lambda: correction["photos"][0] in roof.parts.reading.photos(roof.job)), "its picture went along"
    inspector = person(chromium, roof, tmp_path, "inspector")
    at(inspector, roof, "finding", finding)
    inspector.named("recheck")
    inspector.sees('[data-name="good"]')
    roof.stop()
    readable(inspector)
    good = inspector.page.locator('button[data-name="good"]')
    assert good.is_disabled() and "Critical" in good.inner_text()
    inspector.take("after")
    inspector.named("good")
    inspector.sees('[data-name="finding-state"][data-state="closed"]')
    roof.start()
    assert arrived(roof, "recheck")
    closed = roof.record()["findings"][finding]
    assert (closed["state"], closed["problems"], closed["assignment"]["cause"]["code"]) == ("closed", [], "tool_setting")
    assert [one["kind"] for one in closed["history"]] == ["answer", "assignment", "correction", "recheck"]
    assert closed["closed_by"]["by"] != correction["by"]
    assert foreman.faults == inspector.faults == []


def test_the_office_accepts_a_finding_with_its_document_and_anybody_opens_it_again(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    crew = Crew(roof, "foreman", 1)
    crew.bad_day()
    finding = sorted(crew.deliver()["findings"])[0]
    office = person(chromium, roof, tmp_path, "office")
    at(office, roof, "concede", finding)
    sign = office.page.locator('button[data-name="sign-concession"]')
    office.page.fill("#in-reason", "The engineer found enough movement (invented)")
    assert sign.is_disabled() and "document" in sign.inner_text()
    readable(office)
    office.take("document")
    office.named("sign-concession")
    office.sees('[data-name="finding-state"][data-state="conceded"]')
    office.sees('[data-name="step"][data-kind="concession"] img')
    office.named("reopen")
    office.page.fill("#in-reason", "It moved again (invented)")
    readable(office)
    office.named("keep-reopening")
    office.sees('[data-name="finding-state"][data-state="open"]')
    office.page.evaluate(SEND)
    assert settles(lambda: "reopening" in roof.kinds())
    assert roof.record()["findings"][finding]["state"] == "open"
    assert office.faults == []
