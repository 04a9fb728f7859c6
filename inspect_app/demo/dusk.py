"""The demonstration's last evening: places chosen by hand on the two open legs, one of them failed, one unsafe."""

from inspect_app.demo.walk import Place, Walk

PLACES = (
    Place("quay", 32, "7.5", "field", 0.02, {}, ["11.5", "12", "11.75"]),
    Place("quay", 32, "1", "edge", -0.36, {"over_driven": "Flange dished under the head, will not slide."},
          ["6", "7.25", "6"]),
    Place("yard", 22, "62", "field", -0.05, {}, ["24", "23.5", "24"]),
    Place("yard", 22, "2", "edge", 0.0, {}, ["12", "12", "11.75"]),
)  # fmt: skip
NOTES = {
    "labels": "One bundle of the snap-lock panel and one box of #10 screws opened.",
    "placed_today": "Quay slope 21 to 32, crew 2; Yard roof rests at 22; metal 74 F at dusk.",
    "stops_today": "The drawn stops are in the day's lots; four places more were chosen by hand, one left as unsafe.",
    "tomorrow": "Quay slope goes on from panel 33. The edge of panel 32 stays open until the engineer has seen it.",
}


def walk_at_dusk(walk: Walk) -> None:
    """Open the walk, visit every place, answer the walk's own items, sign."""
    areas = walk.job["areas"]
    walk.notes = NOTES
    placed = [{"area": areas["quay"]["id"], "from": 21, "to": 32}]
    walk.open("end-of-day-walk", ["quay", "yard"], placed, "Crew 2 (invented)")
    for place in PLACES:
        walk.visit(place)
    walk.answer_all("quay")
    walk.leave("quay", 32, "38", "edge", "unsafe")
    walk.sign()
