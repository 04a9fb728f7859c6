"""The demonstration's audit: drawn over every panel that stands and looked at by what still shows, then the same open
places as the foreman's, and a seam opened by agreement where he had found heads driven tight."""

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from inspect_app.demo.walk import Place, Walk
from inspect_app.record.lot_draw import draw_lot

BEFORE_DUSK = timedelta(hours=5)
CREW = "Crew 2 (invented)"
NOT_THERE = ("to_come", "no_seam")
# What a panel that is covered still allows, as the phone asks it (``static/lot/seen.js``).
SEEN = {
    "audit-walk": ("pinned_signs",),
    "seams-and-panel-ends": ("snap_closed", "fold_stage", "clip_bulge", "head_marks", "surface"),
}
SCRATCHED = {"surface": "Scratch to bare metal, a hand long, beside the seam."}
GRIPS = {"head_free": "No 0.005 in feeler enters under two heads of ten; the flange does not move between them."}
TIGHT = {"over_driven": "Three heads of twenty dished the flange, as the crew wrote."}


def audit(walk: Walk, fold: Callable[[], dict[str, Any]], dusk: datetime) -> None:
    """Draw, look, sign. ``walk``: a fresh one of the inspector's; ``fold()``: the job's record so far."""
    walk.clock.to(max(walk.clock(), dusk - BEFORE_DUSK))
    walk.small = True
    record = fold()
    rows, asked = _standing(record), _asked(walk)
    lot = _draw(walk, record, rows, asked)
    keys = {area["id"]: key for key, area in walk.job["areas"].items()}
    walk.open("audit-walk", [keys[area] for area in sorted({row["area"] for row in rows})], [], CREW, independent=True)
    walk.phone.deliver()
    drawn = fold()["lots"][lot]["drawn"]
    reached = _look(walk, drawn, lot, keys, asked)
    again = _open_legs(walk, record, keys)
    under = _opened_seam(walk, record, keys)
    roofs = ", ".join(sorted({walk.job["areas"][keys[row["area"]]]["body"]["name"] for row in rows}))
    walk.notes = {
        "scope": f"All panels set on: {roofs}. For the owner; drawings R-1 and R-2 (invented). "
                 "No hand in the work, and none of the crews' answers read before the looks.",
        "instruments": "Feeler set 3 and thermometer 2, checked this morning on a gauge block and in ice water.",
        "places_reached": f"{reached} of {sum(len(one['places']) for one in drawn)} drawn places, by the phone's draw.",
        "not_seen": "One drawn place lies under the stacked bundles; what the panels cover, but for one seam.",
        "disagreed": f"Open legs looked at again at the foreman's places: {'; '.join(again)}. "
                     f"Otherwise: feeler under the heads of {again[0]}.",
        **({"opened_seam": f"{under}, by invented letter 11: {TIGHT['over_driven']}"} if under else {}),
    }  # fmt: skip
    walk.counts = {"places_reached": reached, "disagreed": 1}
    walk.failed = ("opened_seam",)
    walk.answer_all(keys[rows[0]["area"]], noted=True)
    walk.sign()
    walk.phone.deliver()


def _standing(record: dict[str, Any]) -> list[dict[str, Any]]:
    """The panels that stand, covered or open, in as few stretches as there are."""
    rows: list[dict[str, Any]] = []
    for area in sorted(record["coverage"]):
        for run in record["coverage"][area]["runs"]:
            if run["state"] in NOT_THERE:
                continue
            if rows and rows[-1]["area"] == area and rows[-1]["to"] + 1 == run["from"]:
                rows[-1]["to"] = run["to"]
            else:
                rows.append({"area": area, "from": run["from"], "to": run["to"]})
    return rows


def _asked(walk: Walk) -> list[dict[str, Any]]:
    """What is asked at a drawn place, each as a definition of places."""
    return [
        {**walk.definitions[name], "per": "station",
         "items": [item for item in walk.definitions[name]["items"] if item["id"] in SEEN[name]]}
        for name in SEEN
    ]  # fmt: skip


def _draw(walk: Walk, record: dict[str, Any], rows: list[dict[str, Any]], asked: list[dict[str, Any]]) -> str:
    """The lot's id. Its plan is the job's for audits, its ticket one that the office gives for this draw alone."""
    drawn = draw_lot(record, {
        "purpose": "audit", "crew": "", "ticket": walk.phone.tickets(walk.job["id"], "audit")[0],
        "day": walk.clock().date().isoformat(), "definitions": asked, "population": rows,
    })  # fmt: skip
    walk.phone.say(walk.job["id"], "lot", drawn["subject"], drawn["body"])
    return str(drawn["subject"])


def _look(walk: Walk, drawn: list[dict[str, Any]], lot: str, keys: dict[str, str],
          asked: list[dict[str, Any]]) -> int:  # fmt: skip
    """All good but a scratch at the first place drawn; the last cannot be seen. How many places were reached."""
    reached = 0
    for one in sorted(drawn, key=lambda one: (one["area"], one["panel"])):
        area = keys[one["area"]]
        folded = walk.job["assemblies"][area]["seam"] != "snap_lock"
        for place in one["places"]:
            at = place["from_low_end"]["value"]
            if one is drawn[-1] and place is one["places"][-1]:
                walk.leave(area, one["panel"], at, place["zone"], "covered", "drawn", lot)
                continue
            fails = SCRATCHED if one is drawn[0] and place is one["places"][0] else {}
            absent = ("snap_closed",) if folded else ("fold_stage", "clip_bulge")
            walk.visit(Place(area, one["panel"], at, place["zone"], 0.0, fails, [], absent), "drawn", lot, asked)
            reached += 1
    return reached


def _open_legs(walk: Walk, record: dict[str, Any], keys: dict[str, str]) -> list[str]:
    """Every leg that is still open, at the place where the foreman looked last; on the newest one thing is found
    otherwise. The panels in words, the newest first."""
    lots = [lot for lot in record["lots"].values() if lot["purpose"] == "work" and lot["open_panel"]]
    told: list[str] = []
    for lot in sorted(lots, key=lambda one: one["day"], reverse=True):
        area, panel = lot["population"][0]["area"], lot["open_panel"]
        there = [one for one in record["stations"].values() if (one["area"], one["panel"]) == (area, panel)]
        last = max(there, key=lambda one: (one["at"], one["id"]))
        told.append(_by_hand(walk, keys[area], last, {} if told else GRIPS))
    return told


def _opened_seam(walk: Walk, record: dict[str, Any], keys: dict[str, str]) -> str:
    """Where heads were last found driven tight, and are: the same is found. Empty where nobody found any."""
    tight = [one for one in record["findings"].values() if one["item"] == "over_driven" and one["state"] == "open"]
    if not tight:
        return ""
    newest = max(tight, key=lambda one: (one["opened"]["at"], one["id"]))
    return _by_hand(walk, keys[newest["area"]], newest, TIGHT)


def _by_hand(walk: Walk, area: str, at: dict[str, Any], fails: dict[str, str]) -> str:
    """Everything that is asked of an open leg, at a place somebody named before; the panel in words."""
    zones = {zone["name"]: zone["spacing"]["value"] for zone in walk.job["assemblies"][area]["zones"]}
    gaps = [zones[at["zone"]]] * 3
    walk.visit(Place(area, at["panel"], at["from_low_end"]["value"], at["zone"], 0.02, fails, gaps))
    return f"{walk.job['areas'][area]['body']['name']}, panel {at['panel']}"
