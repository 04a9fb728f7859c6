"""Hatches for what is known of a panel: told apart by their lines, whatever a printer does to colours. The phone's plan
has the same."""

from typing import Any

from reportlab.lib.colors import HexColor, white

from inspect_app.report.pages.look import GREY, HAIR, INK, PALE

# Strongest first, as the record says them.
STATES = ("looked_at", "photographed", "offered", "released", "waiting", "covered_unseen", "open", "to_come", "no_seam")
HARD = HexColor("#7a2e0e")
# State: ground, lines as (rise per run: 1 up, -1 down, 0 level; apart; thickness; dash), their ink.
HATCH: dict[str, tuple[Any, tuple[tuple[int, float, float, tuple[float, ...]], ...], Any]] = {
    "looked_at": (HexColor("#eef2f3"), ((1, 3.6, 0.35, ()), (-1, 3.6, 0.35, ())), INK),
    "photographed": (white, ((0, 2.6, 0.9, (0.9, 2.2)),), INK),
    "offered": (white, ((1, 4.6, 0.45, ()),), INK),
    "released": (HexColor("#e3e9ea"), ((0, 3.0, 0.5, ()),), INK),
    "waiting": (PALE, ((-1, 4.6, 0.45, ()),), GREY),
    "covered_unseen": (HexColor("#f1d3c2"), ((1, 3.6, 1.6, ()),), HARD),
    "open": (white, ((0, 4.2, 0.9, (3.2, 2.4)),), HARD),
    "to_come": (white, (), INK),
    "no_seam": (PALE, (), HAIR),
}


def hatch(canvas: Any, points: list[tuple[float, float]], state: str) -> None:
    """Fill a polygon of the page. Lines run on from one to the next of the same state."""
    ground, lines, ink = HATCH.get(state, HATCH["to_come"])
    xs, ys = zip(*points, strict=True)
    path = canvas.beginPath()
    for at, (x, y) in enumerate(points):
        (path.moveTo if at == 0 else path.lineTo)(x, y)
    path.close()
    canvas.saveState()
    canvas.clipPath(path, stroke=0, fill=0)
    canvas.setFillColor(ground)
    canvas.rect(min(xs), min(ys), max(xs) - min(xs), max(ys) - min(ys), stroke=0, fill=1)
    canvas.setStrokeColor(ink)
    for rise, apart, thick, dash in lines:
        canvas.setLineWidth(thick)
        canvas.setDash(*((list(dash), 0) if dash else ((), 0)))
        for ends in _lines((min(xs), min(ys), max(xs), max(ys)), rise, apart):
            canvas.line(*ends)
    canvas.restoreState()


def _lines(box: tuple[float, float, float, float], rise: int, apart: float) -> list[tuple[float, float, float, float]]:
    west, south, east, north = box
    if rise == 0:
        first = int(south // apart) + 1
        return [(west, at * apart, east, at * apart) for at in range(first, int(north // apart) + 1)]
    step = apart * 1.414
    # y = c + rise x: the corners that lie farthest across the lines tell the first c and the last.
    low, high = (south - east, north - west) if rise > 0 else (south + west, north + east)
    return [
        (west, at * step + rise * west, east, at * step + rise * east)
        for at in range(int(low // step), int(high // step) + 2)
    ]  # fmt: skip


def swatch(canvas: Any, x: float, y: float, wide: float, tall: float, state: str) -> None:
    """A framed box of a hatch, its lower left corner at (x, y)."""
    hatch(canvas, [(x, y), (x + wide, y), (x + wide, y + tall), (x, y + tall)], state)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.4)
    canvas.rect(x, y, wide, tall, stroke=1, fill=0)
