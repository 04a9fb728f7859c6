"""A record as the fold holds it, as much of it as trends read, written down by hand; and a roof with an audit."""

import itertools
from typing import Any

from tests.record.rhythm_sample import FOREMAN, INSPECTOR, ITEMS, Site

BLANK: dict[str, Any] = {name: {} for name in (
    "areas", "walks", "stations", "answers", "photos", "marks", "stops", "releases", "lots", "series", "findings")}


def said(at: str, digest: str = "d", by: str = "fay") -> dict[str, str]:
    return {"digest": digest, "by": by, "at": at}


def on(day: int, hour: int = 8, zone: str = "-05:00") -> str:
    return f"2026-11-{day:02}T{hour:02}:00:00.000{zone}"


def finding(name: str, opened: str, closed: str | None = None, state: str | None = None, **more: Any) -> dict[str, Any]:
    ended = said(closed, f"{name}-end") if closed else None
    history = [said(opened, f"{name}-open"), *([ended] if ended else [])]
    return {
        "id": name, "source": "answer" if "/" in name else "hand", "opened": history[0], "closed_by": ended,
        "state": state or ("closed" if closed else "open"), "area": "north", "zone": "field", "panel": None,
        "severity": "major", "assignment": None, "firm": None, "crew": None, "history": history, **more,
    }  # fmt: skip


def record_of(*findings: dict[str, Any], **more: Any) -> dict[str, Any]:
    areas = {"north": {"assembly": "flange"}, "south": {"assembly": "clips"}}
    return {**BLANK, "areas": areas, "findings": {one["id"]: one for one in findings}, **more}


class Audited(Site):
    """Panels set and looked at by the foreman's lot, then by an audit of the inspector."""

    def looked(self, panel: int, item: str, foreman: str, audit: str, *, by: str = INSPECTOR) -> None:
        """One item on one panel, as both found it."""
        place = {"value": f"{panel}.5", "unit": "ft"}
        self.answer(self.station(panel, place, lot=self.work, chosen="hand"), item, foreman, kid=FOREMAN)
        other = self.station(panel, {"value": "20", "unit": "ft"}, lot=self.audit, chosen="hand", kid=by)
        self.answer(other, item, audit, kid=by)

    def __init__(self) -> None:
        super().__init__()
        self.work = self.plan(1, 40)
        self.mark(self.work, 41)
        self.audit = self.plan(1, 40, purpose="audit", kid=INSPECTOR, crew="")

    @classmethod
    def of(cls, both_bad: int, foreman_only: int, audit_only: int, both_good: int) -> "Audited":
        """So many panels of each kind, each with one item."""
        site, panels = cls(), itertools.count(1)
        for times, foreman, audit in ((both_bad, "fail", "fail"), (foreman_only, "fail", "pass"),
                                      (audit_only, "pass", "fail"), (both_good, "pass", "pass")):  # fmt: skip
            for _ in range(times):
                site.looked(next(panels), ITEMS[1], foreman, audit)
        return site
