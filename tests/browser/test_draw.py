"""A roof area drawn without signal: pulled to its typed lengths, kept through a reload, counted as by hand."""

import time
from pathlib import Path
from typing import Any

import pytest

from inspect_app.rules.layout import layout
from tests.browser.roof import Roof
from tests.browser.test_journey import PHONE, out_of_signal
from tests.browser.walker import Walker

# An L whose right side is a hip and whose inner corner runs up a valley. Two right triangles fix it, 15-20-25 for the
# hip and 9-12-15 for the valley: the corners are (0, 0), (40, 0), (25, 20), (20, 20), (29, 32) and (0, 32) ft.
EDGES = (("eave", "40"), ("hip", "25"), ("ridge", "5"), ("valley", "15"), ("ridge", "29"), ("rake", "32"))


class Drawer(Walker):
    def edge(self, at: int) -> None:
        self.page.locator(f'line[data-edge="{at}"]').dispatch_event("click")
        self.sees(f'[data-name="edge-panel"][data-at="{at}"]')

    def drag(self, corner: int, across: float, up: float) -> None:
        """Drag a corner by so many feet."""
        drawing = self.page.locator('[data-name="drawing"]')
        drawing.scroll_into_view_if_needed()
        scale = float(drawing.get_attribute("data-scale"))
        box = self.page.locator(f'circle[data-corner="{corner}"]').bounding_box()
        x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
        mouse = self.page.mouse
        mouse.move(x, y)
        mouse.down()
        mouse.move(x + across * scale / 2, y - up * scale / 2)
        mouse.move(x + across * scale, y - up * scale)
        mouse.up()
        self.sees(f'[data-name="corner-panel"][data-at="{corner}"]')

    def corner(self) -> tuple[str, str]:
        return tuple(self.page.input_value(f"#in-corner-{axis}") for axis in "xy")  # type: ignore[return-value]


@pytest.fixture
def drawer(chromium: Any, roof: Roof, tmp_path: Path):
    context = chromium.new_context(**PHONE)
    page = out_of_signal(context.new_page(), roof, tmp_path).page
    yield Drawer(page, roof.url, tmp_path)
    context.close()


def test_an_l_with_a_hip_and_a_valley_is_pulled_to_its_lengths_kept_and_counted_as_by_hand(
    drawer: Drawer, roof: Roof
) -> None:
    page = drawer.page
    drawer.named("add-area")
    page.fill("#in-area-name", "Wing")
    drawer.tap('fieldset[data-name="assembly"] button:has-text("nail flange")')
    page.fill('.stepper[data-name="coverage"] input', "24")
    drawer.choose("form", "l")
    drawer.drag(2, -14, 0)  # from (40, 20): the right side leans
    assert drawer.corner() == ("26", "20")
    drawer.drag(4, 10, -8)  # from (20, 40): and the inner side
    assert drawer.corner() == ("30", "32")
    drawer.named("undo")
    drawer.named("undo")
    assert drawer.corner() == ("20", "40")
    drawer.named("redo")
    drawer.named("redo")
    assert drawer.corner() == ("30", "32")
    drawer.drag(5, 0, -8)  # level with its neighbour again
    assert drawer.corner() == ("0", "32")
    drawer.sees('[data-name="faults"] [data-code="edge_unknown"]:has-text("5 edges have no name")')
    for at, (kind, length) in enumerate(EDGES):
        drawer.edge(at)
        page.fill("#in-edge-length", length)
        drawer.choose("edge-kind", kind)
    drawer.sees('[data-name="figures"][data-panels="20"]:has-text("2.67 ft to 32 ft")')
    page.reload()  # the drawing is on the disk, not in the page
    drawer.sees('[data-name="figures"][data-panels="20"]')

    drawer.edge(5)
    page.fill("#in-edge-length", "60")  # the hip and the valley reach up 25 + 15 ft at most
    drawer.sees('[data-code="does_not_close"]:has-text("Edge 6 was typed as 60 ft")')
    assert page.locator('button[data-name="save-area"]').is_disabled()
    drawer.named("undo")
    drawer.sees('[data-name="figures"][data-panels="20"]')
    drawer.named("save-area")
    drawer.sees('h1:has-text("Wing")')
    drawer.sees('[data-name="tally"][data-panels="20"]')
    assert drawer.faults == []

    roof.start()
    for _ in range(900):
        if roof.kinds().count("area") == 3:
            break
        time.sleep(0.1)
    record = roof.record()
    area = next(one for one in record["areas"].values() if one["name"] == "Wing")
    assert area["edges"] == [kind for kind, _ in EDGES]
    assert area["outline"] == {
        "unit": "ft", "lengths": [length for _, length in EDGES],
        "points": [["0", "0"], ["40", "0"], ["25", "20"], ["20", "20"], ["29", "32"], ["0", "32"]],
    }  # fmt: skip
    counted = layout(area, record["assemblies"][area["assembly"]])
    # By hand, panels of 2 ft: ten of 32 ft, three of 20, then shorter by 4/3 of 2 ft each under the hip. Ten seams of
    # 32 ft, four with a piece below and one above the valley, five under the hip. Places stand every 6 in, the closest
    # approved, since nobody told the zones.
    assert (counted["panels"], counted["longest"]) == (20, 32)
    assert counted["lengths"][1] == {"from": 11, "to": 13, "length": 20}
    assert counted["seam_length"] == pytest.approx(456) and counted["area"] == pytest.approx(944)
    assert counted["stations"] == {"": 912}


def test_an_outline_that_crosses_itself_is_refused_in_words_and_mended_by_a_step_back(drawer: Drawer) -> None:
    page = drawer.page
    drawer.named("add-area")
    page.fill("#in-area-name", "Bow tie")
    drawer.sees('[data-name="figures"]')
    drawer.drag(2, -20, -40)  # the ridge's right end below the eave
    drawer.sees('[data-code="outline_crosses"]:has-text("crosses edge")')
    assert page.locator('button[data-name="save-area"]').is_disabled()
    drawer.named("undo")
    drawer.sees('[data-name="figures"]')
    assert page.locator('[data-name="faults"]').count() == 0
    assert page.locator('button[data-name="save-area"]').is_enabled()
