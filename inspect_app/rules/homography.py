"""A plane seen in a picture: the map between the two from the four corners of a known rectangle in it."""


def plane_from_picture(corners: list, width: float, height: float) -> list:
    """The map from pixels to the rectangle's plane, three rows: ``(x, y, 1)`` times a row each, the first two over
    the third. ``corners``: four pixels in order around, the first side ``width`` long; convex, which the caller has
    checked."""
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = corners
    across, down = (x1 - x2, y1 - y2), (x3 - x2, y3 - y2)
    bent = (x0 - x1 + x2 - x3, y0 - y1 + y2 - y3)  # zero for a parallelogram: no perspective
    area = _cross(across, down)
    g, h = _cross(bent, down) / area, _cross(across, bent) / area
    rows = [
        [(x1 - x0 + g * x1) / width, (x3 - x0 + h * x3) / height, x0],
        [(y1 - y0 + g * y1) / width, (y3 - y0 + h * y3) / height, y0],
        [g / width, h / height, 1.0],
    ]
    return _turned_back(rows)


def placed(rows: list, pixel: tuple) -> "tuple | None":
    """The place in the plane of a pixel, None where it lies beyond the plane's horizon."""
    x, y, w = [row[0] * pixel[0] + row[1] * pixel[1] + row[2] for row in rows]
    return (x / w, y / w) if w > 0.0 else None


def _cross(one: tuple, other: tuple) -> float:
    return float(one[0] * other[1] - one[1] * other[0])


def _turned_back(rows: list) -> list:
    """The inverse, but for its scale, which is chosen so that what is in front of the horizon is positive."""
    (a, b, c), (d, e, f), (g, h, i) = rows
    found = [
        [e * i - f * h, c * h - b * i, b * f - c * e],
        [f * g - d * i, a * i - c * g, c * d - a * f],
        [d * h - e * g, b * g - a * h, a * e - b * d],
    ]
    size = a * found[0][0] + b * found[1][0] + c * found[2][0]
    return [[one / size for one in row] for row in found]
