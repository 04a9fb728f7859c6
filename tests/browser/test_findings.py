"""A finding from open to closed on phones without signal, and one accepted by its document and opened again."""

from pathlib import Path
from typing import Any

from tests.browser.lots import Crew
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, arrived, out_of_signal
from tests.browser.test_lots import SEND, at, person, readable, settles
from tests.browser.walker import Walker

SHOWN = """(n) => { const all = [...document.querySelectorAll('main img')]
  return all.length === n && all.every((one) => one.complete && one.naturalWidth) }"""


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
    walker.item("spacing")
    walker.choose("gaps-way", "list")
    walker.page.fill("#in-gap-list", "11 14")
    walker.judged("fail")
    walker.sees('[data-name="back-to-walk"]')


def measure_again(walker: Walker) -> None:
    """What failed by a reading is put right by one: the same instrument and the same rule."""
    walker.tap('[data-name="finding"][data-state="open"]:has-text("far apart")')
    walker.named("correct")
    walker.choose("did", "added")
    walker.choose("gaps-way", "list")
    walker.page.fill("#in-gap-list", "5 1/2 6")
    walker.sees('[data-name="verdict"][data-result="pass"]')
    assert walker.page.locator('[data-name="no-evidence"]').count() == 0
    walker.named("keep-correction")
    walker.sees('[data-name="step"][data-kind="correction"] [data-name="judged"]')


def give_it_to_a_crew(walker: Walker) -> None:
    walker.tap('[data-name="finding"]:has-text("Two rivets")')
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
    walker.page.emulate_media(media="print")
    assert all(walker.page.locator(one).first.is_visible() for one in (".task h3", "img.task-picture"))
    assert not walker.page.locator("button:visible, .strip:visible").count(), "nothing to press on paper"
    walker.page.emulate_media(media="screen")
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
    foreman.sees('[data-name="gravest"]')  # fixed_point is critical
    put_it_right(foreman)
    foreman.sees('[data-name="not-offered"]:has-text("somebody else")')
    assert foreman.page.locator('[data-name="recheck"]').count() == 0, "who corrected it is not offered the recheck"
    at(foreman, roof, "recheck", finding)
    foreman.sees('[data-name="not-offered"][data-why="own"]')
    assert foreman.page.locator('[data-name="good"], [data-name="not-good"]').count() == 0
    at(foreman, roof, "findings", "state", "open")
    measure_again(foreman)

    roof.start()
    assert settles(lambda: roof.kinds().count("correction") == 2)
    (correction,) = roof.record()["findings"][finding]["corrections"]
    (other,) = [one for one in roof.record()["findings"].values() if one["item"] == "spacing"]
    measured = other["corrections"][0]
    assert (other["state"], measured["verdict"]["result"], measured["photos"]) == ("corrected", "pass", [])
    assert measured["verdict"]["rule"] == other["required"]["rule"] and measured["reading"]["gaps"]
    with roof.app.app_context():
        assert settles(lambda: correction["photos"][0] in roof.parts.reading.photos(roof.job)), "its picture went along"
    inspector = person(chromium, roof, tmp_path, "inspector")
    at(inspector, roof, "tomorrow")
    inspector.named("take-along")
    inspector.page.wait_for_selector('[data-name="take-along"]', state="detached", timeout=60000)
    roof.stop()
    at(inspector, roof, "finding", finding)
    inspector.named("recheck")
    inspector.sees('[data-name="good"]')
    inspector.page.wait_for_function(SHOWN, arg=4)
    readable(inspector)
    good = inspector.page.locator('button[data-name="good"]')
    assert good.is_disabled() and "Critical" in good.inner_text()
    inspector.take("after")
    inspector.named("good")
    inspector.sees('[data-name="finding-state"][data-state="closed"]')
    roof.start()
    assert arrived(roof, "recheck")
    closed = roof.record()["findings"][finding]
    assert (closed["state"], closed["problems"]) == ("closed", [])
    assert closed["assignment"]["cause"]["code"] == "tool_setting"
    assert [one["kind"] for one in closed["history"]] == ["answer", "assignment", "correction", "recheck"]
    assert closed["closed_by"]["by"] != correction["by"]
    assert foreman.faults == inspector.faults == []


def by_hand(walker: Walker, roof: Roof, crew: Crew) -> None:
    at(walker, roof, "plan", crew.areas["Quay slope"]["id"], "40")
    walker.named("new-finding")
    walker.page.fill('.stepper[data-name="at"] input', "3.5")
    walker.page.fill("#in-found", "Sealant on the seam (invented)")
    keep = walker.page.locator('button[data-name="keep-finding"]')
    assert keep.is_disabled() and "Required" in keep.inner_text()
    walker.page.fill("#in-required", "No sealant outside the drawn places (invented)")
    walker.choose("severity", "major")
    walker.named("keep-finding")
    walker.sees('[data-name="finding-state"][data-state="open"]')


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
    by_hand(office, roof, crew)
    office.page.evaluate(SEND)
    assert settles(lambda: "reopening" in roof.kinds() and "finding" in roof.kinds())
    found = roof.record()["findings"]
    assert found[finding]["state"] == "open"
    (own,) = [one for one in found.values() if one["source"] == "hand"]
    assert (own["panel"], own["from_low_end"], own["severity"]) == (40, {"value": "3.5", "unit": "ft"}, "major")
    assert office.faults == []
