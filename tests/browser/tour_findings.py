"""The tour's way through findings: listed, given to a crew, put right, written down by hand, a list for tomorrow."""

from collections.abc import Iterator
from typing import Any


def the_findings(tour: Any) -> Iterator[str]:
    """The tour's walk found a pinned panel and a screw at its slot's end."""
    walker, page = tour.walker, tour.page
    tour.at("findings")
    walker.sees('[data-name="finding"]')
    tour.unfold()
    yield "findings"
    walker.tap('[data-name="finding"]:has-text("Two rivets")')
    walker.sees('[data-name="step"]')
    tour.unfold()
    yield "finding: open"
    name = tour.here()[1]
    walker.named("assign")
    walker.sees("#in-cause-words")
    yield "finding: who corrects it"
    walker.named("keep-assignment")
    walker.sees('[data-kind="assignment"]')
    tour.at("tomorrow")
    walker.named("tick")
    walker.sees('[data-name="to-correct"]')
    yield "tomorrow's list"
    walker.named("to-correct")
    walker.sees('[data-name="keep-correction"]')
    yield "finding: correction"
    walker.choose("did", "moved")
    walker.named("open-camera")
    walker.sees('[data-name="live"][data-state="live"] img.veil')
    yield "finding: the same view"
    walker.named("shoot")
    walker.sees('[data-name="shot"] img')
    walker.named("keep-correction")
    walker.sees('[data-name="not-offered"]')
    tour.unfold()
    yield "finding: waiting for somebody else"
    tour.at("concede", name)
    walker.sees('[data-name="not-offered"]')
    yield "finding: accepting, not offered"
    tour.at("new-finding", "walk", tour.walk)
    walker.tap('fieldset[data-name="area"] button')
    page.fill('.stepper[data-name="panel"] input', "5")
    page.fill("#in-found", "Sealant on the seam (invented)")
    walker.sees("#in-at")
    yield "finding by hand"
