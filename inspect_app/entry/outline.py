"""What the shape of a roof area needs beyond its fields: points in pairs and one edge between each two."""

from inspect_app.entry.refusal import Refused


def outline_matches_edges(body: object) -> None:
    """Raises Refused ``bad_field`` for a point that is not ``[x, y]``, also of an opening or a drawn zone; for an
    outline of fewer than three points; and for an edge count that differs: edge i runs from point i to point i + 1, the
    last one back to the first."""
    assert isinstance(body, dict)
    points = body["outline"]["points"]
    _in_pairs(points, "body.outline.points")
    if len(points) < 3:
        raise Refused("bad_field", "body.outline.points", points)
    if len(body["edges"]) != len(points):
        raise Refused("bad_field", "body.edges", body["edges"])
    drawn = (body.get("zone_map") or {}).get("drawn") or []
    for field, within in (("body.openings", body.get("openings") or []), ("body.zone_map.drawn", drawn)):
        for index, one in enumerate(within):
            _in_pairs(one["outline"]["points"], f"{field}[{index}].outline.points")


def _in_pairs(points: list[list[str]], field: str) -> None:
    for index, point in enumerate(points):
        if len(point) != 2:
            raise Refused("bad_field", f"{field}[{index}]", point)
