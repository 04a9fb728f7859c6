"""Each instrument of the phone once, by what a person presses, against the rulebook that the phone carries."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from tests.browser.roof import Roof
from tests.browser.trial import beside_the_released
from tests.browser.walker import Walker

PHONE = {"viewport": {"width": 390, "height": 844}, "locale": "en-US", "has_touch": True}
SIZE, INCH = (2000, 1500), 300  # pixels of the picture, and to the inch: a card of 3.37 in fits
TILT = """async ([beta, gamma, times]) => {
  for (let n = 0; n < times && !document.querySelector('[data-name=slope-start]'); n += 1) {
    dispatchEvent(new DeviceOrientationEvent('deviceorientation', { alpha: 10, beta: beta + (n % 3) / 10, gamma }))
    await new Promise((done) => setTimeout(done, 45))
  }
}"""


@pytest.fixture
def roof(tmp_path: Path) -> Iterator[Roof]:
    made = Roof(tmp_path / "data", beside_the_released(tmp_path / "checklists"))
    made.start()
    yield made
    made.stop()


@pytest.fixture
def walker(chromium: Any, roof: Roof, tmp_path: Path) -> Iterator[Walker]:
    context = chromium.new_context(**PHONE)
    page = context.new_page()
    page.clock.install()
    made = Walker(page, roof.url, tmp_path)
    yield made
    assert made.faults == []
    context.close()


def type_in(walker: Walker, name: str, value: str) -> None:
    walker.page.fill(f'.stepper[data-name="{name}"] input', value)


def verdict(walker: Walker, result: str) -> str:
    found = walker.page.locator(f'[data-name="verdict"][data-result="{result}"]')
    found.wait_for(timeout=60000)
    return str(found.inner_text())


def no_verdict(walker: Walker) -> bool:
    walker.page.locator('button[data-name="record"]:disabled').wait_for(timeout=60000)
    return walker.page.locator('[data-name="verdict"]').count() == 0


def measure_metal(walker: Walker, value: str, by: str) -> None:
    type_in(walker, "metal", value)
    walker.choose("metal-by", by)
    walker.named("metal-take")


def recorded(roof: Roof, walker: Walker, item: str, result: str, told: str) -> dict[str, Any]:
    """Record the reading shown with this verdict, and read it back from the office once it says ``told``."""
    walker.judged(result)
    walker.sees('[data-name="back-to-walk"]')
    for _ in range(600):
        for name, one in roof.record()["answers"].items():
            if name.endswith(f"/trial/{item}") and told in one["reading"]:
                return dict(one["reading"])
        walker.page.wait_for_timeout(50)
    raise AssertionError(f"no {told} of {item} arrived")


def tap_picture(walker: Walker, *points: tuple[float, float]) -> None:
    shown = walker.page.locator('[data-name="tap-picture"]')
    shown.wait_for(timeout=60000)
    for x, y in points:
        box = shown.bounding_box()
        scale = box["width"] / SIZE[0]
        shown.click(position={"x": x * scale, "y": y * scale})


def test_a_place_is_measured_with_each_instrument(walker: Walker, roof: Roof) -> None:
    walker.sign_in("foreman")
    walker.open_job()
    walker.begin_walk()
    walker.place("Quay", "12", "7.5", "field")
    walker.named("look")
    walker.sees('[data-role="where"]')
    a_slot_in_a_word(walker, roof)
    its_taps_in_the_truck(walker, roof)
    a_run_of_gaps(walker, roof)
    a_blade_and_a_step(walker, roof)
    a_sheet(walker, roof)
    a_slope(walker, roof)
    a_count(walker, roof)
    walker.named("back-to-walk")
    walker.place("Yard", "3", "62", "field")
    walker.named("look")
    a_tab_in_old_sun(walker, roof)
    assert any(key.startswith("metal/") for key in drafts(walker, roof))
    walker.named("back-to-walk")
    walker.sign()
    assert not any(key.startswith("metal/") for key in drafts(walker, roof)), "closed: no open work holds up an update"
    walker.tap('[data-name="place"]')
    walker.item("try_slot")
    walker.sees('[data-name="so-far"]')
    assert not any(key.startswith("metal/") for key in drafts(walker, roof)), "nor does looking at it again"


def drafts(walker: Walker, roof: Roof) -> list[str]:
    (walk,) = roof.record()["walks"].values()
    keys = (
        "async (person) => (await (await import('/static/storage/drafts.js')).draftsOf(person)).map(({ key }) => key)"
    )
    return list(walker.page.evaluate(keys, walk["by"]))


def a_slot_in_a_word(walker: Walker, roof: Roof) -> None:
    walker.take("where")
    walker.item("try_slot")
    walker.choose("slot-word", "middle")
    kept = recorded(roof, walker, "try_slot", "too_close", "third")
    assert kept["third"] == "middle" and kept["metal_by"] == "contact" and kept["metal_age"] < 60, kept
    assert kept["metal_temperature"] == {"value": "74", "unit": "F"} and kept["metal_uncertainty"]["value"] == "4"
    assert walker.page.locator('[data-name="taps-left"]').count() == 0, "no picture of the slot to tap on"


def its_taps_in_the_truck(walker: Walker, roof: Roof) -> None:
    page = walker.page
    picture_of(walker, '[data-name="picked-what"] input', "#9fb0b8")
    walker.sees('[data-role="what"] .done-bar')
    walker.tap('[data-name="taps-left"] a')
    tap_picture(walker, (850, 300), (1150, 300), (1000, 300))
    verdict(walker, "pass")
    picture_of(walker, '[data-name="again-what"] input', "#8798a1")
    assert no_verdict(walker), "taps on a picture are none on the next"
    page.go_back()
    page.clock.fast_forward("00:40:00")  # in the truck; the metal was read beside the picture
    walker.tap('[data-name="taps-left"] a')
    walker.named("so-far")
    walker.sees('[data-name="verdict-then"][data-result="too_close"]')
    tap_picture(walker, (850, 300), (1150, 300), (1000 + 0.05 * INCH, 300))
    verdict(walker, "pass")
    alone = page.inner_text('[data-name="bounds"]')
    walker.named("to-card")
    wide, high = 3.37 * INCH, 2.125 * INCH
    tap_picture(walker, (500, 700), (500 + wide, 700), (500 + wide, 700 + high), (500, 700 + high))
    walker.sees('[data-name="bounds"] div:nth-child(2)')
    both = page.inner_text('[data-name="bounds"]')
    assert both.startswith(alone) and bounds(both)[1] < bounds(both)[0], both
    kept = recorded(roof, walker, "try_slot", "pass", "taps")
    assert len(kept["card"]) == 4 and kept["taps"]["ridge_end"][0] < kept["taps"]["screw"][0]
    assert kept["metal_age"] < 60, "of the picture, not of the taps"
    assert page.locator('[data-name="taps-left"]').count() == 0


def picture_of(walker: Walker, field: str, colour: str) -> None:
    file = walker.folder / f"{colour}.jpg"
    Image.new("RGB", SIZE, colour).save(file)
    walker.page.locator(field).set_input_files(str(file))


def bounds(text: str) -> list[float]:
    return [float(word) for word in text.split() if word.startswith("0.")]


def a_run_of_gaps(walker: Walker, roof: Roof) -> None:
    page = walker.page
    walker.item("try_gaps")
    type_in(walker, "gap-count", "11")
    verdict(walker, "not_determinable")
    type_in(walker, "gap-widest", "12.0")
    assert "50\xa0%" in verdict(walker, "pass"), "the risk of simple acceptance, right at the limit"
    for wrong in ("1..1", "11.5"):
        type_in(walker, "gap-count", wrong)
        assert no_verdict(walker), "a widest gap alone passes: not beside a count that stands wrong"
    walker.choose("gaps-way", "list")
    page.fill("#in-gap-list", "11.5 12 1/4 11,13")
    walker.sees('[data-name="gaps-wrong"]:has-text("11,13")')
    assert no_verdict(walker)
    page.fill("#in-gap-list", "11.5 12 1/4 11,5")
    kept = recorded(roof, walker, "try_gaps", "fail", "gaps")
    assert [one["value"] for one in kept["gaps"]] == ["11.5", "12.25", "11.5"] and "count" not in kept


def a_blade_and_a_step(walker: Walker, roof: Roof) -> None:
    walker.item("try_feeler")
    walker.choose("blade", "typed")
    type_in(walker, "reading", "0.0..4")
    assert no_verdict(walker)
    walker.choose("blade", "0")
    assert recorded(roof, walker, "try_feeler", "pass", "value") == {"value": {"value": "0", "unit": "in"}}
    walker.item("try_step")
    walker.tap('.stepper[data-name="reading"] .steps button:nth-child(2)')
    assert walker.page.input_value('.stepper[data-name="reading"] input') == "0.03125"
    walker.page.go_back()


def a_sheet(walker: Walker, roof: Roof) -> None:
    walker.item("try_sheet")
    assert "24" in walker.page.inner_text('[data-name="gauge"]')
    type_in(walker, "reading", "0.0245")
    assert no_verdict(walker), "bare or coated is not said"
    walker.choose("coated", "yes")
    verdict(walker, "not_determinable")
    type_in(walker, "reading", "0.02.45")
    assert no_verdict(walker), "the last right part of a wrong text is nobody's reading"
    type_in(walker, "reading", "0.0245")
    type_in(walker, "coating", "0.003")
    kept = recorded(roof, walker, "try_sheet", "fail", "coating")
    coating = {"coated": True, "coating": {"value": "0.003", "unit": "in"}}
    assert kept == {"value": {"value": "0.0245", "unit": "in"}, **coating}


def a_slope(walker: Walker, roof: Roof) -> None:
    page = walker.page
    walker.item("try_slope")
    walker.named("slope-start")
    walker.sees('[data-name="slope-progress"]')
    page.clock.fast_forward(2000)
    walker.sees('[data-name="slope-silent"]')
    lay(walker, "slope-start", 18.7)
    verdict(walker, "pass")
    lay(walker, "slope-turn", -18.3)
    walker.sees('[data-name="slope-done"]:has-text("both")')
    text = verdict(walker, "pass")
    assert "18.5" in text, text
    kept = recorded(roof, walker, "try_slope", "pass", "reversed")
    assert len(kept["readings"]) >= 20 and len(kept["reversed"]) >= 20
    assert kept["readings"][0]["unit"] == "deg" and kept["reversed"][0]["value"].startswith("18.")


def lay(walker: Walker, press: str, beta: float) -> None:
    """Press, let the phone lie still for the second that it waits, and let it tell its tilt until it has enough."""
    walker.named(press)
    walker.sees('[data-name="slope-progress"]')
    walker.page.clock.fast_forward(1000)
    walker.page.evaluate(TILT, [beta, 1, 90])


def a_count(walker: Walker, roof: Roof) -> None:
    walker.item("try_count")
    type_in(walker, "of", "12")
    type_in(walker, "count", "13")
    walker.sees('[data-name="count-over"]')
    assert no_verdict(walker)
    type_in(walker, "count", "1")
    assert recorded(roof, walker, "try_count", "fail", "of") == {"count": 1, "of": 12}


def a_tab_in_old_sun(walker: Walker, roof: Roof) -> None:
    """The walk's temperature is forty minutes old; a new one serves until sun or shade changes."""
    walker.item("try_tab")
    walker.sees('[data-name="metal-due"]')
    walker.choose("tab-way", "eave")
    type_in(walker, "reading", "0.25")
    verdict(walker, "not_determinable")
    walker.page.clock.fast_forward("00:11:00")
    measure_metal(walker, "88", "infrared")
    assert no_verdict(walker), "read eleven minutes before the temperature was: to be read again"
    type_in(walker, "reading", "0.25")
    verdict(walker, "pass")
    walker.named("metal-changed")
    assert no_verdict(walker)
    measure_metal(walker, "95", "contact")
    kept = recorded(roof, walker, "try_tab", "pass", "value")
    assert kept["value"] == {"value": "-0.25", "unit": "in"}
    assert kept["metal_temperature"]["value"] == "95" and kept["metal_by"] == "contact" and kept["metal_age"] < 5


def test_the_office_states_an_instrument_and_the_crew_reads_it(walker: Walker, roof: Roof) -> None:
    page = walker.page
    walker.sign_in("office")
    walker.open_job()
    for name in ("fold-approved", "instruments", "own-tape"):
        walker.named(name)
    assert page.locator('button[data-name="save-instruments"]').is_disabled(), "nobody says so yet"
    type_in(walker, "doubt-tape", "0.03")
    page.fill("#in-source-tape", "invented: laid beside a steel rule, 12 September")
    walker.choose("acceptance", "simple")
    before = roof.record()["job"]
    walker.named("save-instruments")
    walker.sees('[data-name="fold-lots"]')
    for _ in range(600):
        if roof.kinds().count("job") == 2:
            break
        page.wait_for_timeout(50)
    record = roof.record()
    job = record["job"]
    assert job["acceptance"] == "simple" and job["instruments"]["tape"]["uncertainty"] == {
        "value": "0.03",
        "unit": "in",
    }
    assert not job["instruments"]["rule"]["own"] and job["heads"] == [job["digest"]], "one version stands"
    changed = {name for name in before | job if before.get(name) != job.get(name)}
    assert changed <= {"instruments", "acceptance", "digest", "at", "by", "clock", "heads"}, changed
    assert record["flags"] == []
