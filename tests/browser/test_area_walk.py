"""Papers, boxes and tags of one roof area, answered from the ground: no metal, no places, a photo for each answer."""

from pathlib import Path
from typing import Any

from inspect_app.evidence.fact import HOLDS
from inspect_app.evidence.verify import verify
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, arrived
from tests.browser.walker import Walker


def test_an_area_is_checked_before_work_without_going_up(chromium: Any, roof: Roof, tmp_path: Path) -> None:
    walker = Walker(chromium.new_context(**PHONE).new_page(), roof.url, tmp_path)
    page = walker.page
    walker.sign_in("foreman")
    walker.open_job()
    walker.named("start")
    walker.named("ground")
    walker.sees('fieldset[data-name="definition"]')
    assert page.locator('[data-name="metal"], [data-name="by"]').count() == 0
    assert page.locator('fieldset[data-name="definition"] button').count() == len(
        [one for one in definitions(roof) if one["per"] == "area" and "foreman" in one["performed_by"]]
    )
    walker.choose("sky", "clear")
    walker.choose("wind", "calm")
    assert page.locator('button[data-name="begin"]').is_disabled(), "an area is still to be chosen"
    walker.tap('fieldset[data-name="areas"] button:has-text("Quay")')
    walker.named("begin")
    walker.sees('[data-name="all-good"]')
    assert page.locator('[data-name="new-place"]').count() == 0

    with_photo = [item["id"] for item in definition(roof)["items"] if item["photo"] == "required" and not item["rule"]]
    first, second = with_photo[:2]
    walker.item(first)
    walker.take("what")
    walker.named("pass")
    walker.sees(f'[data-name="item"][data-item="{first}"][data-result="pass"]')
    assert page.locator(f'[data-name="as-approved"][data-item="{second}"]').count() == 0, "it has no picture of its own"
    walker.named("all-good")
    walker.sees('[data-name="sheet-answered"], .done-bar')
    walker.sign()
    assert arrived(roof, "signoff") and roof.app.extensions["background"].settled(30)

    record = roof.record()
    (walk,) = record["walks"].values()
    assert (walk["fall_protection"], walk.get("metal_temperature")) == ("not_on_roof", None)
    assert {answer["area"] for answer in record["answers"].values()} == set(walk["areas"]) and len(walk["areas"]) == 1
    assert "of one roof area" in walk["signoff"]["statement"], "papers have no places"
    assert not [flag for flag in record["flags"] if flag["code"] != "orphan"]
    (sealed,) = (roof.parts.settings.data / "reports" / roof.job).glob("report-*.pdf")
    told = verify(sealed.read_bytes())
    status = {fact.name: fact.status for fact in told.facts}
    assert not told.failed and status["verdicts_recompute"] == HOLDS
    page.evaluate("(hash) => { location.hash = hash }", f"#/job/{roof.job}")
    walker.named("fold-walks")
    walker.sees('[data-name="walk"]:has-text("Before work: does the assembly fit this roof?")')
    walker.named("start")
    walker.named("safe")
    walker.sees('fieldset[data-name="areas"]')
    chosen = page.locator('fieldset[data-name="areas"] [aria-pressed="true"]')
    assert chosen.count() == 2, "the evening's walk goes over every area again"
    page.evaluate("(hash) => { location.hash = hash }", f"#/job/{roof.job}/report")
    number = int(sealed.stem.removeprefix("report-"))
    walker.sees(f'[data-name="report-number"]:has-text("Report no. {number}")')
    assert walker.faults == []


def test_what_was_read_on_one_area_is_not_judged_as_another_s(chromium: Any, roof: Roof, tmp_path: Path) -> None:
    walker = Walker(chromium.new_context(**PHONE).new_page(), roof.url, tmp_path)
    walker.sign_in("foreman")
    walker.open_job()
    walker.begin_walk()
    walker.item("coil_thickness")
    number = walker.page.locator('.stepper[data-name="reading"] input')
    for area in ("Quay", "Yard"):
        walker.tap(f'fieldset[data-name="area"] button:has-text("{area}")')
        walker.sees(f'[data-name="gauge"]:has-text("{area}")')
        assert number.input_value() == "" and walker.page.locator('[data-name="verdict"]').count() == 0
        number.fill("0.0265")
        walker.choose("coated", "no")
        walker.sees('[data-name="verdict"][data-result="pass"]')
    walker.tap('fieldset[data-name="area"] button:has-text("Yard")')  # the same again takes nothing away
    assert number.input_value() == "0.0265"
    assert walker.faults == []


def definitions(roof: Roof) -> list[dict[str, Any]]:
    return [compiled.definition for compiled in roof.parts.definitions.by_digest.values()]


def definition(roof: Roof) -> dict[str, Any]:
    return next(one for one in definitions(roof) if one["id"] == "before-work-fit")
