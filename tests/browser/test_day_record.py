"""A crew's day written on the phone without signal: pressed, photographed, killed, signed, corrected; a day of rain."""

from pathlib import Path
from typing import Any

from tests.browser.roof import Roof
from tests.browser.test_day import SEND, entries, plan, set_to
from tests.browser.test_journey import PHONE, arrived, out_of_signal
from tests.browser.walker import Walker

PHOTOS = """async () => { const { withDb } = await import('/static/storage/database.js')
  const keys = await withDb(['outbox'], 'readonly', (tx) => tx.store.getAllKeys())
  return keys.filter((one) => one[1] === 'photo').map((one) => one[3]) }"""

KEPT = """async (text) => { const { withDb } = await import('/static/storage/database.js')
  return JSON.stringify(await withDb(['drafts'], 'readonly', (tx) => tx.store.getAll())).includes(text) }"""


def write_the_day(walker: Walker) -> None:
    """All of it but the signature, most of it pressed; a coil of a lighter gauge is noticed by its label."""
    page = walker.page
    page.fill('.stepper[data-name="heads"] input', "4")
    walker.choose("sky-now", "clear")
    walker.choose("wind-0", "calm")
    for part in ("instructions", "submittals", "safety"):
        walker.choose("none", part)
    walker.named("open-materials")
    walker.choose("material-what", "coil")
    walker.take("label")
    walker.choose("gauge", "26")
    walker.sees('[data-name="against"][data-gauge="lighter"]')
    says = page.inner_text('[data-name="against"]')
    assert "26 (MSG)" in says and "0.0170" in says
    walker.choose("coating", "AZ50, painted")
    walker.sees('[data-name="against"][data-coating="agree"]')
    walker.choose("accepted", "set_aside")
    walker.named("material-done")
    walker.named("open-equipment")
    walker.choose("equipment", "seamer")
    page.fill("#in-operator-seamer", "Ada (invented)")
    walker.named("open-delays")
    walker.choose("delays", "rain")
    walker.named("open-tied")
    walker.choose("tied", "bundles")
    page.fill("#in-tied-words", "tarp on the hatch")


def test_a_day_is_written_without_signal_survives_a_kill_is_corrected_and_a_day_of_rain_is_two_presses(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    context = chromium.new_context(**PHONE)
    walker = out_of_signal(context.new_page(), roof, tmp_path)
    page = walker.page
    walker.named("day")
    plan(walker, "Quay", 6)
    set_to(walker, 1)
    walker.sees('[data-name="day-record"][data-there="no"]')
    walker.named("day-record")
    walker.sees('[data-name="sign-day"]')
    assert "panel 1 set" in page.inner_text("main")
    write_the_day(walker)
    page.wait_for_function(KEPT, arg="tarp on the hatch")  # a disk takes a moment, and a test types in none
    page.reload()  # killed: the page comes back to where it was, with all that was pressed
    walker.sees('[data-name="part-tied"][data-told="yes"]')
    assert page.input_value("#in-tied-words") == "tarp on the hatch"
    assert "26 MSG" in page.inner_text('[data-name="open-materials"]')
    assert "Watch kept off the site" in page.inner_text('[data-name="untold"]')
    walker.named("sign-day")
    walker.sees('[data-name="day-told"]')
    (said,) = entries(page, "day")
    body = said["body"]
    assert (body["head_count"], body["crew"], body["no_work"]) == (4, "Crew 2 (invented)", None)
    assert body["tied_down"] == "bundles; tarp on the hatch" and body["submittals"] == "none" and body["offsite"] == ""
    (coil,) = body["materials"]
    assert (coil["gauge"], coil["gauge_system"], coil["accepted"]) == ("26", "MSG", "set_aside")
    assert page.evaluate(PHOTOS) == coil["photos"], "the label goes along with the record that names it"
    walker.named("correct-day")
    page.fill('.stepper[data-name="heads"] input', "5")
    walker.named("sign-day")
    walker.sees('[data-name="day-told"]:has-text("5")')
    first, second = entries(page, "day")
    assert second["subject"] == first["subject"] and len(second["replaces"]) == 1
    assert second["body"] == {**first["body"], "head_count": 5}
    rain(walker)
    roof.start()
    page.evaluate(SEND)
    assert arrived(roof, "day")
    assert walker.faults == []
    context.close()


def rain(walker: Walker) -> None:
    page = walker.page
    page.evaluate("() => { location.hash = location.hash.split('/').slice(0, 4).join('/') }")
    walker.sees('[data-name="record-of"][data-there="yes"]')
    page.fill("#in-record-day", "2026-09-11")
    walker.named("write-day")
    walker.named("idle")
    walker.choose("why", "rain")
    walker.named("sign-idle")
    walker.sees('[data-name="day-told"]:has-text("rain")')
    assert entries(page, "day")[-1]["body"]["no_work"] == "rain"
