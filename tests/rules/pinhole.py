"""A pinhole camera, written from its definition (central projection): it knows nothing of the rules.

26 mm equivalent on 4032 × 3024 pixels, looking at a plane z = 0 in inches.
"""

import math

FOCAL, SIZE = 26 / 36 * 4032, (4032, 3024)
MIDDLE = (SIZE[0] / 2, SIZE[1] / 2)
SHANK, HEAD = 0.190, 0.06
CARD = (85.60 / 25.4, 53.98 / 25.4)  # ISO/IEC 7810 ID-1 (from memory)


def camera(tilt, round_about, distance, looks_at):
    """A function from a point in inches (slot plane z = 0) to its pixel; ``tilt`` and ``round_about`` in radians."""
    away = (math.cos(round_about), math.sin(round_about))
    forward = (-math.sin(tilt) * away[0], -math.sin(tilt) * away[1], -math.cos(tilt))
    right = (-away[1], away[0], 0.0)
    down = (forward[1] * right[2] - forward[2] * right[1], forward[2] * right[0] - forward[0] * right[2],
            forward[0] * right[1] - forward[1] * right[0])  # fmt: skip
    eye = [target - distance * step for target, step in zip((*looks_at, 0.0), forward, strict=True)]

    def pixel(point):
        seen = [one - own for one, own in zip(point, eye, strict=True)]
        depth, across, below = (sum(a * b for a, b in zip(seen, axis, strict=True)) for axis in (forward, right, down))
        return MIDDLE[0] + FOCAL * across / depth, MIDDLE[1] + FOCAL * below / depth

    return pixel


def slot_marks(slot, offset, pixel, axis):
    """Ridge end, eave end and the middle of the head, in pixels; the slot about the plane's origin."""
    places = ((slot / 2, 0.0), (-slot / 2, 0.0), (offset, HEAD))
    return [pixel((along * axis[0], along * axis[1], height)) for along, height in places]


def judged_slot(judge, slot, points, rule="slot", **more):
    """What the slot rule makes of three points, at the fixed line itself, where the free end is toward the ridge."""
    return judge(rule, {
        "expansion": {"value": "0.0000065", "unit": "/F"}, "metal_low": {"value": "-20", "unit": "F"},
        "metal_high": {"value": "180", "unit": "F"}, "metal_now": {"value": "70", "unit": "F"},
        "slot": {"value": f"{slot:.6f}", "unit": "in"}, "shank": {"value": str(SHANK), "unit": "in"},
        "length": {"value": "40", "unit": "ft"}, "station": {"value": "0", "unit": "ft"},
        "fixed_line": {"value": "0", "unit": "ft"}, "head_height": {"value": str(HEAD), "unit": "in"},
        "taps": {name: [f"{one:.2f}" for one in point]
                 for name, point in zip(("ridge_end", "eave_end", "screw"), points, strict=True)}, **more,
    })  # fmt: skip


def tapped(chance, points):
    """Each mark off by up to 3 pixels in both directions."""
    return [tuple(one + chance.uniform(-3, 3) for one in point) for point in points]
