"""The crew's rhythm on the phone: a day planned, drawn, marked, looked at and closed, through real entries."""

import re
from pathlib import Path
from typing import Any

import pytest

from inspect_app.entry.jws import parse_jws
from inspect_app.record.stops import drawn_panels
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, out_of_signal
from tests.browser.walker import Walker

TOKENS = """async () => { const { withDb } = await import('/static/storage/database.js')
  return (await withDb(['entries'], 'readonly', (tx) => tx.store.getAll())).map((one) => one.token) }"""
SEND = "async () => { await (await import('/static/sync/engine.js')).sendNow() }"
LATER = "(ms) => { const now = Date.now; Date.now = () => now() + ms }"


def entries(page: Any, kind: str) -> list[dict]:
    """The payloads of this kind kept on the phone, in its chain's order."""
    found = [parse_jws(token, "seamwalk-entry").payload for token in page.evaluate(TOKENS)]
    return sorted((one for one in found if one["kind"] == kind), key=lambda one: one["seq"])


def plan(walker: Walker, area: str, to: int) -> list[int]:
    """Plan an area's panels from 1 on; the panels drawn, as a stranger works them out of the signed lot."""
    walker.named("plan-day")
    walker.tap(f'fieldset[data-name="plan-area"] button:has-text("{area}")')
    if walker.page.locator('fieldset[data-name="plan-crew"]').count() == 0:
        walker.page.fill("#in-crew", "Crew 2 (invented)")
    walker.page.fill('.stepper[data-name="to"] input', str(to))
    walker.named("draw")
    walker.sees(f'[data-name="front"]:has-text("{area}")')
    lot = entries(walker.page, "lot")[-1]
    rows = [(one["area"], one["from"], one["to"]) for one in lot["body"]["population"]]
    return [panel for _, panel in drawn_panels(lot["subject"], lot["body"], rows)]


def set_to(walker: Walker, panel: int) -> None:
    """Say that the panels up to this one are set."""
    walker.page.fill('.stepper[data-name="mark-to"] input', str(panel))
    walker.named("mark")
    walker.sees(f'.day-set:has-text("Panels to {panel} set")')


def begin_look(walker: Walker, name: str) -> None:
    """The safety gate and the day as it is; then back where one was."""
    walker.named(name)
    walker.named("safe")
    walker.page.fill('.stepper[data-name="metal"] input', "74")
    for field, value in (("by", "contact"), ("sky", "clear"), ("wind", "calm")):
        walker.choose(field, value)
    walker.named("begin")


def tells(page: Any, panel: int) -> bool:
    """Whether anything on the page, words or addresses, tells of a stop or a place at this panel."""
    return re.search(rf"[Pp]anel {panel}\b|(?:stop|hold)/[^\"']*/{panel}\b", page.content()) is not None


def release_the_first(walker: Walker) -> None:
    walker.named("to-hold")
    begin_look(walker, "begin-look")
    walker.sees('[data-name="unseen"]')
    walker.tap('[data-name="as-approved"][data-item="zone_line"]')
    walker.page.wait_for_selector('[data-name="unseen"]', state="detached")
    walker.named("release")
    walker.sees('[data-name="front"]:not([data-state="hold"])')


def test_a_day_without_signal_from_its_plan_to_its_night_and_a_hold_gone_over_that_stays(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    context = chromium.new_context(**PHONE)
    walker = out_of_signal(context.new_page(), roof, tmp_path)
    page = walker.page
    walker.named("day")
    drawn = plan(walker, "Quay", 12)
    assert len(drawn) == 5 and "5 stops" in page.inner_text('[data-name="sealed"]')
    assert not any(tells(page, panel) for panel in drawn if panel > 1)
    set_to(walker, 1)
    walker.sees('[data-name="front"][data-state="hold"]')
    release_the_first(walker)
    for panel in range(1, min(one for one in drawn if one > 2)):
        if panel > 1:
            set_to(walker, panel)
        hidden = [one for one in drawn if one > panel + 1]
        assert not any(tells(page, one) for one in hidden), f"of {hidden} nothing at panel {panel}"
        assert all(tells(page, one) for one in drawn if one == panel + 1), "shown one panel ahead"
    stop = min(one for one in drawn if one > 2)
    told = page.inner_text(".day-state")
    # One drawn right before it stands in front first: what comes after is not told beside it.
    assert f"Next stop: panel {stop}" in told or (stop - 1 in drawn and f"Stop: panel {stop - 1}" in told)
    look_at_a_stop(walker, stop)
    close_the_day(walker, stop)
    being_drawn(page)
    kinds = [one["kind"] for one in (parse_jws(token, "seamwalk-entry").payload for token in page.evaluate(TOKENS))]
    assert {name: kinds.count(name) for name in ("lot", "stop", "release")} == {"lot": 1, "stop": 0, "release": 2}
    assert all(one["body"]["severity"] for one in entries(page, "answer"))
    nobody_came(walker)
    gone_over(walker, roof.job)
    assert walker.faults == []
    context.close()


def being_drawn(page: Any) -> None:
    """A lot said a moment ago is not in the record yet: the day does not say that nothing is planned."""
    before = page.evaluate("location.hash")
    page.evaluate("(hash) => { location.hash = hash }", before.split("/day")[0] + "/day/said%2Fjust%2Fnow")
    page.wait_for_selector('[data-name="being-drawn"]')
    assert page.locator('[data-name="plan-day"]').count() == 0
    page.evaluate("(hash) => { location.hash = hash }", before)
    page.wait_for_selector('[data-name="being-drawn"]', state="detached")


def look_at_a_stop(walker: Walker, panel: int) -> None:
    """One place looked at, one covered, one unsafe, and a picture along the leg."""
    page = walker.page
    set_to(walker, panel)
    walker.sees('[data-name="front"][data-state="stop"]')
    walker.named("to-stop")
    walker.sees('[data-name="drawn-place"]')
    assert page.locator('[data-name="drawn-place"]').count() == 3
    walker.tap('[data-name="drawn-place"] [data-name="place-covered"]')
    walker.sees('[data-name="seen-place"].covered')
    walker.tap('[data-name="drawn-place"] [data-name="place-unsafe"]')
    walker.sees('[data-name="seen-place"].unsafe')
    walker.named("look")
    walker.named("back-to-walk")
    walker.sees('[data-name="stop-state"]')
    walker.take("leg")
    stations = entries(page, "station")
    assert [one["body"]["reached"] for one in stations] == ["covered", "unsafe", "yes"]
    assert {(one["body"]["chosen"], one["body"]["panel"]) for one in stations} == {("drawn", panel)}
    (photo,) = entries(page, "photo")
    assert (photo["body"]["role"], photo["body"]["panel"], photo["body"]["station"]) == ("leg", panel, None)
    assert photo["body"]["lot"] == stations[0]["body"]["lot"] == entries(page, "lot")[0]["subject"]
    walker.named("to-day")
    walker.sees('[data-name="front"]')


def close_the_day(walker: Walker, panel: int) -> None:
    page = walker.page
    walker.named("to-night")
    walker.named("night-mark")
    begin_look(walker, "begin-night")
    walker.sees('[data-step="1"] details[open]')
    assert page.locator('[data-name="step"]').count() == 4
    walker.named("all-good")
    for item in ("nothing_loose", "seams_closed"):
        walker.tap(f'[data-name="as-approved"][data-item="{item}"]')
    walker.sees('[data-step="1"][data-done="true"]')
    assert page.locator('[data-step="3"] [data-name="drawn-place"]').count() == 5
    assert entries(page, "mark")[-1]["body"] | {"night": True, "to": panel} == entries(page, "mark")[-1]["body"]
    walker.named("release")
    walker.sees('[data-name="closed-lot"]')
    night = entries(page, "release")[-1]["body"]
    assert (night["why"], night["panel"], night["walk"]) == ("night", panel, entries(page, "walk")[-1]["subject"])


def nobody_came(walker: Walker) -> None:
    """Another area, all of its three panels drawn: a stop that nobody comes to within ten minutes."""
    page = walker.page
    assert sorted(plan(walker, "Yard", 3)) == [1, 2, 3]
    set_to(walker, 1)
    walker.tap('[data-name="stop"][data-state="due"]')
    nobody = page.locator('button[data-name="not-attended"]')
    assert nobody.is_disabled() and "10 min" in nobody.inner_text()
    page.evaluate(LATER, 601_000)
    page.wait_for_selector('button[data-name="not-attended"]:enabled', timeout=60000)
    nobody.click()
    walker.sees('[data-name="stop"][data-state="not_attended"]:has-text("offered, not attended")')
    (stop,) = entries(page, "stop")
    assert (stop["body"]["outcome"], stop["body"]["panel"]) == ("not_attended", 1)


def gone_over(walker: Walker, job: str) -> None:
    """The first panel, still held, is covered: two presses, and it is shown as what it is."""
    page, before = walker.page, len(entries(walker.page, "mark"))
    assert page.locator('button[data-name="mark"]').count() == 0, "no single press covers a held leg"
    walker.named("against")
    assert len(entries(page, "mark")) == before
    walker.named("against-sure")
    walker.sees('.day-set:has-text("Panels to 2 set")')
    assert entries(page, "mark")[-1]["body"]["against"] == [1]
    lot = entries(page, "lot")[-1]["subject"].replace("/", "%2F")
    page.evaluate("(to) => { location.hash = to }", f"#/job/{job}/hold/{lot}/1/first")
    walker.sees('[data-name="hold-state"][data-state="covered_against"]')
    assert page.locator('[data-name="release"]').count() == 0


@pytest.mark.soak  # minutes of a browser: the suite walks the first of them
def test_two_phones_on_one_area_lose_no_mark_and_share_the_state_when_they_meet_signal(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    one, other = (chromium.new_context(**PHONE) for _ in range(2))
    first, second = (Walker(context.new_page(), roof.url, tmp_path) for context in (one, other))
    for walker, login in ((first, "foreman"), (second, "inspector")):
        walker.sign_in(login)
        walker.open_job()
        walker.named("day")
    plan(first, "Quay", 12)
    for walker in (first, second):
        walker.page.evaluate(SEND)
    second.sees('[data-name="front"]')
    roof.stop()
    set_to(first, 1)
    first.named("against")
    first.named("against-sure")
    first.sees('.day-set:has-text("Panels to 2 set")')
    set_to(second, 1)
    assert "Panels to 1 set" in second.page.inner_text(".day-state")
    roof.start()
    for walker in (first, second, first):
        walker.page.evaluate(SEND)
    second.sees('.day-set:has-text("Panels to 2 set")')
    assert roof.kinds().count("mark") == 3, "both said that panel 1 is set, and both stay"
    assert second.page.locator('[data-name="mark"]').inner_text().startswith("Panels to 3 set")
    for context in (one, other):
        context.close()
