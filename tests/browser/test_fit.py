"""The fit check of an area, made without network or server: what was found stays, and it arrives once."""

from pathlib import Path
from typing import Any

from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, arrived, out_of_signal
from tests.browser.walker import Walker


def test_a_fit_check_without_signal_keeps_what_was_found_and_arrives_once(
    chromium: Any, roof: Roof, tmp_path: Path
) -> None:
    context = chromium.new_context(**PHONE)
    out_of_signal(context.new_page(), roof, tmp_path).page.close()

    walker = Walker(context.new_page(), roof.url, tmp_path)
    page = walker.page
    page.goto(f"{roof.url}/#/job/{roof.job}")  # cold, with nothing to fetch from
    walker.tap('[data-name="area"]:has-text("Quay")')
    walker.named("fit")
    walker.tap('[data-line="fixed_count"][data-result="not_determinable"]')
    walker.sees('.problem:has-text("counted on the fixing drawing")')
    number = page.locator('.stepper[data-name="fixed_lines"] input')
    number.fill("2")
    walker.sees('[data-name="verdict"][data-result="fail"]')
    number.fill("2..")  # a slip of the finger is nobody's count
    walker.sees('[data-name="verdict"][data-result="not_determinable"]')
    number.fill("2")
    walker.sees('[data-name="verdict"][data-result="fail"]')
    page.reload()  # what was found is on the disk, not in the page
    walker.sees('[data-name="verdict"][data-result="fail"]')
    page.go_back()
    walker.tap('[data-line="penetration"]')
    page.fill('.stepper[data-name="build_up"] input', "0.25")
    short = page.locator('.stepper[data-name="fastener_length"] input')
    for typed, result in (("0.5", "fail"), ("0.5..", "not_determinable"), ("", "pass")):
        short.fill(typed)  # one that was measured and typed wrong is not the approved one
        walker.sees(f'[data-name="verdict"][data-result="{result}"]')
    page.fill('.stepper[data-name="build_up"] input', "")
    walker.sees('[data-name="verdict"][data-result="not_determinable"]')
    page.go_back()
    first = page.locator('[data-name="fit-line"]').first
    assert first.get_attribute("data-result") == "fail"
    walker.named("record-fit")
    walker.sees('[data-name="fit"].fail:has-text("Tomas Ridgeway")')
    assert "fit" not in roof.kinds()

    roof.start()
    assert arrived(roof, "fit") and roof.kinds().count("fit") == 1
    ((area, fit),) = roof.record()["fits"].items()
    results = {one["line"]: one["verdict"] for one in fit["lines"]}
    assert (roof.record()["areas"][area]["name"], fit["result"], fit["found"]) == (
        "Quay slope", "fail", {"fixed_lines": 2}
    )  # fmt: skip
    assert results["fixed_count"]["values"]["margin"] == {"value": "-1", "unit": ""}
    assert results["slope_found"]["reason"]["facts"]["path"] == "found.slope"
    assert (results["slope_found"]["result"], results["slope_drawn"]["result"]) == ("not_determinable", "pass")
    walker.named("fit")
    walker.sees('.done-bar:has-text("Worst line: Does not pass")')
    assert page.locator('[data-name="fit-since"]').count() == 0
    page.clock.set_fixed_time("2029-01-01T12:00:00Z")  # the approval has run out meanwhile
    page.reload()
    walker.sees('[data-name="fit-since"]:has-text("1 line"):has-text("Approval in force")')
    walker.named("fit-again")
    walker.sees('[data-line="fixed_count"][data-result="fail"]')
    assert walker.faults == []
    context.close()
