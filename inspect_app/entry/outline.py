"""What the shape of a roof area needs beyond its fields: points in pairs and one edge between each two."""

from inspect_app.entry.refusal import Refused


def outline_matches_edges(body: object) -> None:
    """Raises Refused ``bad_field`` for a point that is not ``[x, y]``, fewer than three points, or an edge
    count that differs: edge i runs from point i to point i + 1, the last one back to the first."""
    assert isinstance(body, dict)
    points = body["outline"]["points"]
    for index, point in enumerate(points):
        if len(point) != 2:
            raise Refused("bad_field", f"body.outline.points[{index}]", point)
    if len(points) < 3:
        raise Refused("bad_field", "body.outline.points", points)
    if len(body["edges"]) != len(points):
        raise Refused("bad_field", "body.edges", body["edges"])
