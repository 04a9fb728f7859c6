"""What a plan lets through, as a roof that falls from its ridge: of a hundred lots so bad, so many are accepted."""

from itertools import pairwise
from typing import Any

from inspect_app.report.pages.look import ACCENT, GREY, HAIR, INK, PALE, PLAIN
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.working import percent
from inspect_app.rules.risk import acceptance

HEIGHT = 56.0
STEPS = 24
POINTS = ("95", "50", "10")
SEVERITIES = ("critical", "major", "minor")


def curve_of(lot: dict[str, Any], severity: str) -> tuple[int, int] | None:
    """``(n, accept)`` of what was looked at, in an open lot of what is to be; None where no chance is left, or nothing
    was looked at."""
    one = lot["decision"]["by"].get(severity) or {}
    plan = one.get("plan")
    if not plan or not one.get("risk") or one.get("state") == "not_asked":
        return None
    n = one["n"] if lot["closed"] else one["drawn"] - one["dropped"]
    if n <= 0 or one["reject"] - 1 >= n or plan["n"] >= plan["size"] or one["risk"]["10"] >= 1.0:
        return None
    return n, one["reject"] - 1


def draw_curves(canvas: Any, width: float, lot: dict[str, Any], page: Page) -> None:
    """One curve a severity, side by side; the same one again is only named."""
    known: dict[tuple[int, int], str] = {}
    for at, severity in enumerate(SEVERITIES):
        curve = curve_of(lot, severity)
        canvas.saveState()
        canvas.translate(at * width / 3, 0)
        if curve in known:
            canvas.setFont(PLAIN, 6.4)
            canvas.setFillColor(GREY)
            canvas.drawString(0, HEIGHT - 8, page.say("curve_same", severity=page.say(f"lot.severity.{known[curve]}")))
        elif curve:
            known[curve] = severity
            _curve(canvas, width / 3 - 14, curve, lot["decision"]["by"][severity]["risk"], page)
        canvas.restoreState()


def _curve(canvas: Any, width: float, curve: tuple[int, int], risk: dict[str, float], page: Page) -> None:
    left, low, tall = 14.0, 10.0, HEIGHT - 16
    reach = min(1.0, max(risk["10"] * 1.3, 0.02))
    wide = width - left

    def at(share: float, chance: float) -> tuple[float, float]:
        return left + share / reach * wide, low + chance * tall

    points = [at(reach * step / STEPS, acceptance(*curve, reach * step / STEPS)) for step in range(STEPS + 1)]
    roof = canvas.beginPath()
    roof.moveTo(*at(0, 0))
    for point in points:
        roof.lineTo(*point)
    roof.lineTo(points[-1][0], low)
    roof.close()
    canvas.setFillColor(PALE)
    canvas.drawPath(roof, stroke=0, fill=1)
    canvas.setStrokeColor(HAIR)
    canvas.setLineWidth(0.35)
    for x, y in points[1:]:
        canvas.line(x, low, x, y)
    canvas.setStrokeColor(INK)
    canvas.setLineWidth(0.5)
    canvas.line(left, low, left, low + tall + 3)
    canvas.line(left, low, left + wide, low)
    canvas.setLineWidth(1.1)
    for one, other in pairwise(points):
        canvas.line(*one, *other)
    for name in POINTS:
        _point(canvas, *at(risk[name], int(name) / 100), name, percent(risk[name]))
    canvas.setFont(PLAIN, 5.6)
    canvas.setFillColor(GREY)
    for name in POINTS:
        canvas.drawRightString(left - 2.5, low + int(name) / 100 * tall - 2, name)
    canvas.drawRightString(left + wide, 2.5, page.say("curve_across"))
    canvas.drawString(left, 2.5, "0")


def _point(canvas: Any, x: float, y: float, name: str, text: str) -> None:
    canvas.setFillColor(ACCENT)
    if name == "95":
        canvas.circle(x, y, 2.3, stroke=0, fill=1)
    elif name == "50":
        canvas.rect(x - 2.1, y - 2.1, 4.2, 4.2, stroke=0, fill=1)
    else:
        lozenge = canvas.beginPath()
        lozenge.moveTo(x, y + 3)
        for dx, dy in ((3, 0), (0, -3), (-3, 0)):
            lozenge.lineTo(x + dx, y + dy)
        lozenge.close()
        canvas.drawPath(lozenge, stroke=0, fill=1)
    canvas.setFillColor(INK)
    canvas.setFont(PLAIN, 6.2)
    canvas.drawString(x + 4.5, y + (1.5 if name != "10" else 3), text.replace("&lt;", "<"))
