"""The whole roof from the layouts of its areas: what an estimator adds up."""

from inspect_app.rules.unit import change_unit


def roof_totals(layouts: list) -> dict:
    """``{"unit", "areas", "panels", "seams", "seam_length", "longest", "area", "stations": {zone: count}}`` of what
    ``rules/layout.py`` gives for each area, lengths in the first one's unit. An area that has no layout is not among
    the ``areas`` counted. ``unit``, ``longest`` and the lengths are None where there is none at all."""
    laid = [one for one in layouts if one is not None and one["panels"] is not None]
    if not laid:
        return {"unit": None, "areas": 0, "panels": 0, "seams": 0, "seam_length": None, "longest": None, "area": None,
                "stations": {}}  # fmt: skip
    unit = laid[0]["unit"]
    stations: dict = {}
    for one in laid:
        for zone in one["stations"]:
            stations[zone] = stations.get(zone, 0) + one["stations"][zone]
    side = [change_unit(1.0, one["unit"], unit) for one in laid]
    return {
        "unit": unit, "areas": len(laid), "panels": sum([one["panels"] for one in laid]),
        "seams": sum([one["seams"] for one in laid]),
        "seam_length": sum([laid[at]["seam_length"] * side[at] for at in range(len(laid))]),
        "longest": max([laid[at]["longest"] * side[at] for at in range(len(laid))]),
        "area": sum([laid[at]["area"] * side[at] * side[at] for at in range(len(laid))]), "stations": stations,
    }  # fmt: skip
