"""One phone taken through every screen of the app, in the order of a day; the server goes away early."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from tests.browser import tour_roof
from tests.browser.roof import Roof
from tests.browser.tour_day import the_day
from tests.browser.tour_findings import the_findings
from tests.browser.tour_lots import the_lots
from tests.browser.tour_office import the_office
from tests.browser.tour_phone import this_phone
from tests.browser.tour_survey import the_survey
from tests.browser.walker import Walker

READY = re.compile("✓ (ready for no signal|listo sin señal)")
ABSENT = "01a00000-0000-7000-8000-0000000000ff"


class Tour:
    """``screens()`` gives the name of each screen while the page shows it. With ``settle`` of the page's own
    fetches: what a screen shows a moment later (a picture, a verdict) is waited for."""

    def __init__(self, page: Any, roof: Roof, folder: Path) -> None:
        self.walker, self.page, self.roof = Walker(page, roof.url, folder), page, roof

    def screens(self) -> Iterator[str]:
        yield from self.before_the_signal_goes()
        self.roof.stop()
        yield from self.the_job()
        yield from self.begin()
        yield from self.nail_flange()
        yield from self.clip()
        yield from self.whole_walk()
        yield from self.close()
        yield from the_findings(self)
        yield from the_day(self)
        yield from the_lots(self)
        yield from the_survey(self)
        yield from this_phone(self)

    def at(self, *steps: str) -> None:
        """Go to an address of the job."""
        self.to("job", self.roof.job, *steps)

    def to(self, *steps: str) -> None:
        self.page.evaluate("(hash) => { location.hash = hash }", "#/" + "/".join(steps))

    def here(self) -> list[str]:
        """The steps of the address, after the job's."""
        return str(self.page.evaluate("location.hash")).split("/")[3:]

    def unfold(self) -> None:
        self.page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true })")

    def item(self, name: str) -> str:
        self.walker.item(name)
        self.walker.sees('[data-name="not-here"]')
        self.unfold()
        return f"item {name}"

    def before_the_signal_goes(self) -> Iterator[str]:
        walker, page = self.walker, self.page
        page.goto(self.roof.url)
        walker.sees("#in-login")
        yield "sign-in"
        page.fill("#in-login", "foreman")
        page.fill("#in-password", "not this one")
        walker.named("sign-in")
        walker.sees(".problem")
        yield "sign-in refused"
        walker.sign_in("foreman")
        yield "jobs"
        walker.open_job()
        page.locator(".strip").filter(has_text=READY).wait_for(timeout=60000)
        self.at("report")
        walker.sees('[data-name="report-state"][data-state="none"]')
        yield "report: none yet"
        self.at("report", "new")
        walker.sees('fieldset[data-name="language"]')
        yield "report: a new one"
        yield from the_office(self)

    def the_job(self) -> Iterator[str]:
        walker, page = self.walker, self.page
        self.at()
        walker.sees('[data-name="start"]')
        yield "job"
        self.unfold()
        walker.sees('[data-name="approved"]')
        yield "job, all of it"
        for number, name in enumerate(("clip", "nail flange")):
            self.at()
            page.locator('[data-name="approved"]').nth(number).click()
            walker.sees(".zones")
            yield f"approved: {name}"
        self.at()
        walker.named("area")
        walker.sees('[data-name="tally"]')
        yield "area"
        yield from self.fit()
        self.at("instruments")
        walker.sees("[data-instrument]")
        yield "instruments of the job"
        self.at("card")
        walker.sees('[data-name="lead"]')
        yield "card: run and slot do not go together"
        walker.tap('fieldset[data-name="card-area"] button:has-text("Yard")')
        page.fill(".card:not(.elsewhere) .stepper input", "150")
        walker.sees(".seam.one")
        yield "card: hot metal"
        yield from tour_roof.plan(self)
        yield from tour_roof.draw(self)
        self.at("area", ABSENT)
        yield "opening"

    def fit(self) -> Iterator[str]:
        walker, page = self.walker, self.page
        walker.named("fit")
        walker.sees('[data-name="fit-line"]')
        yield "fit check"
        walker.tap('[data-line="clearance"]')
        page.fill('.stepper[data-name="clearance"] input', "0.25")
        page.fill('.stepper[data-name="metal_now"] input', "70")
        walker.sees('[data-name="verdict"]:not([data-result="not_determinable"])')
        self.unfold()
        yield "fit check: a line with its working"
        page.go_back()
        walker.tap('[data-line="deck"]')
        walker.choose("deck", "other")
        walker.sees('[data-name="verdict"][data-result="fail"]')
        yield "fit check: a line that a person says"
        page.go_back()
        walker.named("record-fit")
        walker.sees('[data-name="fit"].fail')
        yield "area with a fit check"
        walker.named("fit")
        walker.sees('[data-name="fit-again"]')
        yield "fit check, recorded before"

    def begin(self) -> Iterator[str]:
        walker, page = self.walker, self.page
        self.at("start")
        walker.sees(".gate")
        yield "fall protection"
        walker.named("safe")
        walker.choose("sky", "wet")
        walker.choose("wind", "gusts")
        page.locator('fieldset[data-name^="placed-"] [data-value="yes"]').first.click()
        walker.sees('[data-name^="from-"]')
        yield "walk start"
        page.fill('.stepper[data-name="metal"] input', "74")
        walker.choose("by", "contact")
        walker.choose("sky", "clear")
        walker.choose("wind", "calm")
        page.fill("#in-crew", "Crew 2 (invented)")
        walker.named("begin")
        walker.sees('[data-name="new-place"]')
        self.walk = self.here()[1]
        yield "walk"
        walker.place("Quay", "12", "7.5", "field")
        yield "place"

    def nail_flange(self) -> Iterator[str]:
        walker = self.walker
        walker.named("look")
        walker.sees('[data-role="where"]')
        self.flange = self.here()
        yield "nail flange: nothing answered"
        walker.take("what", -0.38)
        walker.sees(".problem")
        yield "nail flange: a close-up alone"
        walker.take("where")
        walker.named("all-good")
        walker.sees(".part > .done-bar")
        yield "nail flange: the quick ones answered"
        yield self.item("slot_place")
        walker.tap_slot(-0.38)
        walker.sees('[data-name="verdict"]')
        self.unfold()
        yield "item slot_place: verdict"
        walker.named("to-card")
        walker.sees('[data-name="to-slot"]')
        yield "item slot_place: a card"
        walker.named("metal-changed")
        walker.sees('[data-name="metal-take"]')
        self.page.fill('.stepper[data-name="metal"] input', "126")
        walker.choose("metal-by", "infrared")
        yield "item slot_place: the metal again"
        walker.named("metal-take")
        walker.choose("slot-way", "word")
        walker.choose("slot-word", "middle")
        walker.sees('[data-name="verdict"]')
        self.unfold()
        yield "item slot_place: in one word"
        walker.named("record")
        walker.sees('[data-name="back-to-walk"]')
        yield self.item("spacing")
        walker.choose("gaps-way", "list")
        self.page.fill("#in-gap-list", "11,13 and so on")
        walker.sees('[data-name="gaps-wrong"]')
        yield "item spacing: not understood"
        self.page.fill("#in-gap-list", "11 12 1/4")
        walker.sees('[data-name="verdict"]')
        self.unfold()
        yield "item spacing: verdict"
        walker.named("record")
        walker.sees('[data-name="back-to-walk"]')
        yield self.item("over_driven")
        self.page.fill('.stepper[data-name="of"] input', "3")
        self.page.fill('.stepper[data-name="count"] input', "4")
        walker.sees('[data-name="count-over"]')
        yield "item over_driven: more than looked at"
        self.page.go_back()
        walker.sees('[data-name="back-to-walk"]')
        yield self.item("fixed_point")
        self.page.fill("#in-note", "Two rivets through the pan at mid-length")
        walker.named("fail")
        walker.sees('[data-name="back-to-walk"]')
        yield "nail flange: findings, and taps to make"

    def clip(self) -> Iterator[str]:
        walker = self.walker
        self.at("walk", self.walk)
        walker.place("Yard", "3", "62", "edge")
        walker.named("look")
        walker.sees('[data-role="where"]')
        yield "clip: nothing answered"
        yield self.item("fasteners_per_clip")
        self.page.go_back()
        walker.sees('[data-name="back-to-walk"]')
        yield self.item("clip_gap")
        walker.choose("blade", "typed")
        yield "item clip_gap: another blade"
        self.page.go_back()
        walker.sees('[data-name="back-to-walk"]')
        yield self.item("tab_place")
        walker.choose("tab-way", "eave")
        self.page.fill('.stepper[data-name="reading"] input', "0.25")
        walker.sees('[data-name="verdict"]')
        self.unfold()
        yield "item tab_place: verdict"
        self.at("walk", self.walk)
        walker.place("Yard", "9", "40", "field")
        walker.named("unsafe")
        walker.sees('[data-name="sign"]')
        walker.tap('[data-name="place"].unsafe')
        walker.sees('[data-name="back-to-walk"]')
        yield "place not reached"

    def whole_walk(self) -> Iterator[str]:
        walker = self.walker
        self.at("walk", self.walk)
        walker.sees('[data-name="sign"]')
        yield "walk with places"
        yield self.item("hem_gap")
        self.page.go_back()
        walker.sees('[data-name="sign"]')
        yield self.item("coil_thickness")
        walker.choose("coated", "yes")
        yield "item coil_thickness: coated"
        self.page.go_back()
        walker.sees('[data-name="sign"]')
        yield self.item("slope")
        walker.named("slope-start")
        walker.sees('[data-name="slope-silent"]')
        yield "item slope: no sensor"
        walker.named("slope-type")
        yield "item slope: typed"
        self.page.go_back()
        walker.sees('[data-name="sign"]')
        yield self.item("labels")

    def close(self) -> Iterator[str]:
        walker = self.walker
        self.at("sign", self.walk)
        walker.sees('[data-name="pad"]')
        yield "sign-off"
        self.at("walk", self.walk)
        walker.sees('[data-name="new-place"]')
        walker.sign()
        yield "walk signed"
        self.at()
        walker.sees('[data-name="area"]')
        yield "job with findings"
        self.at("report")
        walker.sees('[data-state="no_signal"]')
        yield "report: no signal"
