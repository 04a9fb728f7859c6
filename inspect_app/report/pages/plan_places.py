"""What stands on a roof plan: the fixed line and the places looked at, their labels out of each other's way."""

from typing import Any

from reportlab.lib.colors import white

from inspect_app.report.pages.ground import fixed_at
from inspect_app.report.pages.look import ACCENT, BOLD, INK, PLAIN
from inspect_app.report.pages.mark import draw_mark
from inspect_app.report.pages.outline import Outline
from inspect_app.report.pages.text import plain
from inspect_app.report.pages.voice import Voice

THIRDS = (0.5, 0.3, 0.7)
Box = tuple[float, float, float, float]
Spot = tuple[float, float, dict[str, Any]]


def place_spots(shape: Outline, stations: list[dict[str, Any]], px: Any, py: Any) -> list[Spot]:
    """``(x, y, station)`` on the page for each station that lies on a panel of this area."""
    spots = []
    for one in stations:
        x, along = shape.middle(one.get("panel")), shape.along(one, "from_low_end")
        if x is not None and along is not None:
            spots.append((px(x), py(shape.ends(x)[0] + along), one))
    return spots


def found_by_hand(findings: list[dict[str, Any]], area: Any) -> list[dict[str, Any]]:
    """Findings on an area where nobody had a place to look at, as places: ``n`` is ``F3``."""
    return [
        {"n": f"F{one['n']}", "panel": one["told"]["panel"], "from_low_end": one["told"]["from_low_end"],
         "result": "fail", "reached": "yes"}
        for one in findings if one["source"] == "hand" and one["area"] == area and not one["station"]
    ]  # fmt: skip


def mark_box(x: float, y: float, size: float) -> Box:
    """The room that a mark takes."""
    return x - size - 1, y - size - 1, x + size + 1, y + size + 1


def name_fixed_line(canvas: Any, shape: Outline, line: Any, to: Any, voice: Voice, taken: list[Box]) -> None:
    """Its name beside the fixed line, where nothing else stands."""
    fixed, high = shape.along(line or {}, "from_low_end"), shape.along(line or {}, "from_high_end")
    if fixed is None:
        return
    word = voice.say("fixed_line")
    wide = canvas.stringWidth(word, BOLD, 6.5)
    strips = shape.strips()
    near, far = strips[len(strips) // 2]
    y = to(0, fixed_at(shape, near, far, fixed, high, line))[1]
    under = y - 9.5 if fixed > shape.height * 0.5 else y + 3.5
    left, right = to(shape.left, 0)[0] + 4, to(shape.left + shape.width, 0)[0] - 4 - wide
    spots = [(x, under, x + wide, under + 7) for x in (right, left, (left + right) / 2)]
    _word(canvas, spots, word, BOLD, 6.5, ACCENT, taken)


def name_zones(canvas: Any, shape: Outline, bands: list[dict[str, Any]], to: Any, voice: Voice, taken: list[Box],
               ) -> None:  # fmt: skip
    """The name of each zone once, in a large field of it that holds the word."""
    rooms: dict[str, list[Box]] = {}
    for band in bands:
        strips = shape.runs(band["from"], band["to"])
        for low, high, zone in band["runs"] if strips else []:
            corner, end = to(min(one[0] for one in strips), low), to(max(one[1] for one in strips), high)
            rooms.setdefault(zone or "", []).append((*corner, *end))
    for zone in sorted(set(rooms) - {""}):
        word = voice.say(f"zone.{zone}") if zone in ("field", "edge", "corner") else plain(zone, 20)
        wide = canvas.stringWidth(word, PLAIN, 6.2)
        largest = sorted(rooms[zone], key=lambda box: (box[0] - box[2]) * (box[3] - box[1]))[:4]
        fits = [box for box in largest if box[2] - box[0] > wide + 4 and box[3] - box[1] > 9]
        if spots := [_within(box, at, up, wide) for box in fits for up in THIRDS for at in THIRDS]:
            _word(canvas, spots, word, PLAIN, 6.2, INK, taken)


def _within(box: Box, at: float, up: float, wide: float) -> Box:
    x, y = box[0] + (box[2] - box[0]) * at, box[1] + (box[3] - box[1]) * up
    return x - wide / 2, y - 3, x + wide / 2, y + 4


def _word(canvas: Any, spots: list[Box], word: str, font: str, size: float, ink: Any, taken: list[Box]) -> None:
    box = next((spot for spot in spots if not _hits(spot, taken)), spots[0])
    taken.append(box)
    canvas.setFillColor(white)
    canvas.rect(box[0] - 2, box[1] - 0.8, box[2] - box[0] + 4, 8, stroke=0, fill=1)
    canvas.setFont(font, size)
    canvas.setFillColor(ink)
    canvas.drawString(box[0], box[1] + 1.2, word)


def _hits(box: Box, taken: list[Box]) -> bool:
    return any(box[0] < t[2] and box[2] > t[0] and box[1] < t[3] and box[3] > t[1] for t in taken)


def draw_places(canvas: Any, spots: list[Spot], taken: list[Box], size: float, labelled: bool) -> None:
    """The marks, and beside each its number where nothing else stands. ``taken`` grows by the numbers."""
    for x, y, one in spots:
        draw_mark(canvas, x, y, one["result"], one["reached"] or "yes", size)
        if not labelled:
            continue
        text = str(one["n"])
        wide = canvas.stringWidth(text, BOLD, 7)
        beside = [(size + 3, -2.5), (-size - 3 - wide, -2.5), (-wide / 2, size + 3), (-wide / 2, -size - 8)]
        boxes = [(x + dx, y + dy - 1, x + dx + wide, y + dy + 6) for dx, dy in beside]
        box = next((one for one in boxes if not _hits(one, taken)), boxes[0])
        taken.append(box)
        canvas.setFillColor(white)
        canvas.rect(box[0] - 0.8, box[1] - 0.4, wide + 1.6, 7.6, stroke=0, fill=1)
        canvas.setFillColor(INK)
        canvas.setFont(BOLD, 7)
        canvas.drawString(box[0], box[1] + 1, text)
