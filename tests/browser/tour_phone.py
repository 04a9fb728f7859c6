"""The tour's way past what is only on this phone, its people, and the door."""

from collections.abc import Iterator
from typing import Any


def this_phone(tour: Any) -> Iterator[str]:
    walker = tour.walker
    tour.to("unsent")
    walker.sees("li[data-state]")
    yield "unsent"
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
