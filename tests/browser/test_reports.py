"""A report of one walk is asked for on the phone, watched while it is made, and fetched; no signal is said."""

import re
from pathlib import Path
from typing import Any

from inspect_app.evidence.verify import verify
from tests.browser.eye import readable
from tests.browser.roof import PASSWORD, Roof
from tests.browser.test_lots import at, person
from tests.phone import Phone, new_uuid


def signed_walk(roof: Roof) -> str:
    """A walk of somebody else's phone, arrived at the office: its id."""
    with roof.app.app_context():
        owner = roof.parts.accounts.by_login("foreman")
    phone = Phone(roof.app.test_client(), owner)
    assert phone.sign_in(PASSWORD).status_code == 200 and phone.enrol().status_code == 201
    assert phone.get_token().status_code == 200
    area, walk, station = next(iter(roof.record()["areas"])), new_uuid(), new_uuid()
    definition = next(iter(roof.parts.definitions.by_digest))
    phone.send(phone.entry("walk", roof.job, walk, {"definition": definition, "areas": [area], "placed": []}),
               phone.entry("station", roof.job, station, {"walk": walk, "area": area}),
               phone.entry("signoff", roof.job, walk, {"walk": walk}))  # fmt: skip
    return walk


def test_a_report_of_one_walk_is_asked_for_watched_and_fetched(chromium: Any, roof: Roof, tmp_path: Path) -> None:
    walk = signed_walk(roof)
    assert roof.app.extensions["background"].settled(60)
    walker = person(chromium, roof, tmp_path, "foreman")
    page = walker.page
    at(walker, roof, "report")
    walker.sees('[data-name="report-state"][data-state="ready"]')
    walker.sees('[data-name="one-report"][data-state="holds"]:has-text("Whole job")')
    walker.named("new-report")
    walker.choose("kind", "walk")
    assert page.locator('[data-name="walk"] [aria-pressed="true"]').count() == 1, "of an only walk nobody asks which"
    readable(page)
    walker.choose("walk", walk)
    walker.choose("language", "es")
    walker.choose("paper", "a4")
    making, roof.app.extensions["reports"].make = roof.app.extensions["reports"].make, slowly(roof)
    walker.named("ask-report")
    walker.sees('[data-name="making"][data-stage="lay_out"] progress[value="70"]')
    walker.sees('[data-name="report-state"][data-state="making"]')
    readable(page)
    roof.go.set()
    walker.sees('[data-name="one-report"]:has-text("One walk")')
    roof.app.extensions["reports"].make = making
    walker.tap('[data-name="one-report"]:has-text("One walk")')
    walker.sees('[data-name="standing"][data-state="holds"]')
    readable(page)
    walker.named("fetch-report")
    with page.expect_download() as saved:
        walker.named("open-report")
    told = verify(Path(saved.value.path()).read_bytes())
    assert saved.value.suggested_filename == "seamwalk-report-2.pdf" and not told.failed
    at(walker, roof, "report")
    walker.sees('[data-name="report-state"][data-state="ready"]')
    page.evaluate("navigator.serviceWorker.ready.then(() => true)")
    roof.stop()
    page.reload()
    walker.sees('[data-name="report-state"][data-state="no_signal"]')
    walker.sees('[data-name="as-of"]:has-text("As of ")')
    walker.sees('[data-name="one-report"][data-state="holds"]:has-text("One walk")')
    assert page.locator('[data-name="one-report"]').count() == 2, "what the office last told, after a start without it"
    assert not re.search(r"\d{4}-\d\d-\d\d", page.inner_text("body")), "no date for machines"
    readable(page)
    walker.named("new-report")
    walker.named("ask-report")
    walker.sees('.problem[role="alert"]')
    assert walker.faults == []


def slowly(roof: Roof) -> Any:
    """Makes reports as ever, but waits between two stages until it is let go on."""
    import threading

    roof.go, make = threading.Event(), roof.app.extensions["reports"].make

    def made(*given: Any, tell: Any, **more: Any) -> Any:
        tell("lay_out", 0.7)
        assert roof.go.wait(30)
        return make(*given, tell=tell, **more)

    return made
