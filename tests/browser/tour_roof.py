"""The stops of the tour on the roof plan and at the drawing board."""

from collections.abc import Iterator
from typing import Any


def plan(tour: Any) -> Iterator[str]:
    walker, page = tour.walker, tour.page
    tour.at("plan")
    walker.sees('[data-name="tally-roof"]')
    walker.choose("show", "zones")
    yield "roof plan: zones"
    walker.choose("show", "state")
    walker.tap('fieldset[data-name="plan-area"] button:has-text("Quay")')
    page.fill('.stepper[data-name="plan-panel"] input', "12")
    walker.sees('[data-name="panel-places"]')
    walker.named("closer")
    yield "roof plan: a panel"


def draw(tour: Any) -> Iterator[str]:
    walker, page = tour.walker, tour.page
    tour.at("draw")
    walker.sees("#in-area-name")
    walker.choose("fixed-known", "between")
    page.fill('.stepper[data-name="slope"] input', "steep")
    walker.sees(".problem")
    yield "new area"
    page.fill('.stepper[data-name="slope"] input', "4")
    walker.choose("form", "l")
    page.locator('line[data-edge="2"]').dispatch_event("click")
    page.fill("#in-edge-length", "120")
    walker.sees('[data-name="faults"]')
    yield "new area: an edge that does not close"
    walker.named("undo")
    page.locator('circle[data-corner="3"]').click(force=True)
    walker.sees('[data-name="corner-panel"]')
    yield "new area: a corner"
    tour.at("draw", "new", "openings")
    walker.named("add")
    walker.sees("#in-opening-name")
    yield "new area: an opening"
    tour.at("draw", "new", "zones")
    walker.named("offer")
    page.fill('.stepper[data-name="least_width"] input', "80")
    page.fill('.stepper[data-name="height"] input', "20")
    walker.choose("edition", "ASCE 7-10")
    walker.named("take-offer")
    walker.named("add")
    walker.choose("zone-state", "redrawn")
    walker.sees('[data-name="stations"]')
    yield "new area: zones"
    tour.at("draw", "new", "place")
    walker.choose("up", "90")
    yield "new area: its place"
    tour.at("draw")
    walker.choose("form", "free")
    walker.named("lay")
    walker.sees('circle[data-corner="0"]')
    yield "new area: corner by corner"
