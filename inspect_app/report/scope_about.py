"""What a report's scope is about, in the facts that a list of reports and a cover name it by."""

from typing import Any

from inspect_app.record.scope import WHOLE


def about(scope: dict[str, Any], days: list[dict[str, Any]], lots: list[dict[str, Any]],
          areas: list[dict[str, Any]]) -> dict[str, Any]:  # fmt: skip
    """``{"at", "title", "crew", "by", "areas"}`` of a walk; ``{"day", "crew", "by", "areas", "n"}`` of an audit, ``n``
    the panels it drew; of a place ``{"area", "panel", "from_low_end", "radius"}``, the area by its name; of the whole
    job nothing. ``days``, ``lots`` and ``areas`` as the report tells them."""
    names = {area["id"]: area["name"] for area in areas}
    for day in days if scope["kind"] == "walk" else []:
        if day["id"] == scope["walk"]:
            return {"at": day["at"], "title": day["definition"]["title"], "crew": day["crew"],
                    "by": day["by"]["name"], "areas": day["areas"]}  # fmt: skip
    for lot in lots if scope["kind"] == "audit" else []:
        if lot["lot"] == scope["lot"]:
            rows = [names.get(row["area"], row["area"]) for row in lot["rows"]]
            return {"day": lot["day"], "crew": lot["crew"], "by": lot["by"]["name"], "areas": list(dict.fromkeys(rows)),
                    "n": len(lot["stops"])}  # fmt: skip
    place = {name: value for name, value in scope.items() if name != "kind"}
    return {} if scope == WHOLE else place | ({"area": names.get(place["area"])} if "area" in place else {})
