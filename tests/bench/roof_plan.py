"""How the roof plan opens and moves with 600, 6,000 and 60,000 places, on a page four times slower.

Opened cold: in a page just loaded, until all areas with their seams are painted; the record is folded on the way.
Moved: one press of "closer", and the slowest step of a dragging finger.
"""

import tempfile
from pathlib import Path
from typing import Any

from playwright.sync_api import sync_playwright

from tests.bench.measure import Row
from tests.bench.planes import planes
from tests.browser.conftest import CHROMIUM, FLAGS
from tests.browser.roof import Roof
from tests.browser.walker import Walker

SLOWER, SIZES, PASSES, STEPS = 4, (600, 6_000, 60_000), 3, 12
TIMED = Path(__file__).with_name("roof_plan.js")
PLAN = '[data-name="roof-plan"][data-ready="true"]'


def rows() -> list[Row]:
    with sync_playwright() as driver:
        browser = driver.chromium.launch(executable_path=CHROMIUM, headless=True, args=FLAGS)
        try:
            few, some, many = [_taken(browser, size) for size in SIZES]
        finally:
            browser.close()
    return [
        Row(f"open the plan of 6,000 places, {some['open']:.0f} ms", f"of 600, {few['open']:.0f} ms",
            some["open"] / few["open"], 2, "three areas more to read and to draw"),
        Row(f"open the plan of 60,000 places, {many['open']:.0f} ms", "of 600", many["open"] / few["open"], 4,
            "forty areas: their entries read and folded, an outline and one path of seams each"),
        Row(f"draw it one step closer, {many['closer']:.0f} ms", f"of 600, {few['closer']:.0f} ms",
            many["closer"] / few["closer"], 4, "no area is drawn anew, all are scaled"),
        Row(f"the slowest step of a finger on it, {many['drag']:.0f} ms", "100 ms", many["drag"] / 100, 1,
            "the plan goes with the finger, at once to a person (common practice, no source)"),
    ]  # fmt: skip


def _taken(browser: Any, size: int) -> dict[str, float]:
    with tempfile.TemporaryDirectory() as folder:
        roof = Roof(Path(folder) / "data", areas=planes(size))
        roof.start()
        context = browser.new_context(viewport={"width": 390, "height": 844}, locale="en-US", has_touch=True)
        try:
            page = context.new_page()
            page.add_init_script(path=TIMED)
            page.goto(roof.url, timeout=120000)  # the server reads and packs its files once
            Walker(page, roof.url, Path(folder)).sign_in("foreman")
            page.goto(f"{roof.url}/#/job/{roof.job}")
            page.locator(".strip").filter(has_text="✓ ready for no signal").wait_for(timeout=120000)
            return _measured(page, roof)
        finally:
            context.close()
            roof.stop()


def _measured(page: Any, roof: Roof) -> dict[str, float]:
    slow = page.context.new_cdp_session(page)
    least = dict.fromkeys(("open", "closer", "drag"), float("inf"))
    for _ in range(PASSES):
        slow.send("Emulation.setCPUThrottlingRate", {"rate": 1})
        page.goto(f"{roof.url}/#/phone")
        page.reload()
        page.wait_for_selector('[data-name="sign-out"]', timeout=60000)
        slow.send("Emulation.setCPUThrottlingRate", {"rate": SLOWER})
        now = {"open": page.evaluate("(way) => wait.open(way)", [f"#/job/{roof.job}/plan", PLAN])}
        page.wait_for_selector('[data-name="tally-roof"]', timeout=60000)  # counted by then: only the drawing is timed
        now["closer"] = max(page.evaluate("() => wait.press('closer')") for _ in range(3))
        now["drag"] = page.evaluate("(steps) => wait.drag(steps)", STEPS)
        least = {name: min(least[name], now[name]) for name in least}
    return least
