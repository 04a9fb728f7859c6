"""The tour's way past what is only on this phone, its people, and the door."""

from collections.abc import Iterator
from typing import Any


def this_phone(tour: Any) -> Iterator[str]:
    walker = tour.walker
    tour.to("unsent")
    walker.sees("li[data-state]")
    yield "unsent"
    tour.to("copy")
    walker.sees('[data-name="make-copy"]')
    yield "copy"
    walker.named("make-copy")
    walker.sees('[data-name="copy-made"]')
    walker.named("download-copy")
    walker.sees('[data-given="true"]')
    tour.page.evaluate("scrollTo(0, 0)")  # what stands under the strip is pressed once it does not
    yield "copy: made and handed over"
    tour.to("missing")
    walker.sees("h1")
    yield "nothing is missing"
    tour.to("phone")
    walker.sees('[data-name="sign-out"]')
    yield "phone"
    walker.named("sign-out")
    walker.sees('[data-name="sign-out-sure"]')
    yield "phone: sign out?"
    tour.at("nowhere")
    walker.sees("h1")
    yield "nothing here"
    tour.to("phone")
    walker.named("lock")
    walker.sees('[data-name="unlock"]')
    tour.page.fill("#in-pin-digits", "9999")
    walker.named("unlock")
    walker.sees(".problem")
    yield "who"
