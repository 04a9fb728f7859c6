"""What a card lying in a plane tells of the camera that saw it: the plane, and how far and which way it is tilted.

The card is of size ID-1, 85.60 × 53.98 mm, its corners rounded by 3.18 mm (ISO/IEC 7810, from memory): a tap falls
between where the sides would meet and the middle of the rounding, so half way is taken, and the rest is doubt.
Assumed of the camera: central projection with square pixels; 6 to 24 in from the flange to the lens; its axis meets
the flange within 1.5 in of the middle between card and slot. Neither the picture's size nor its focal length is needed.

A camera with square pixels that sees the plane through a map H stands on a circle: the pixels at infinity in the
isotropic directions, H⁻¹(1, ±i, 0) = a ± i·b, are seen from it at right angles and equal lengths. So with κ = 1/|b|,
a lens D above the plane is tilted by θ where sin θ = κ·D, away from the line through a along b, and its axis meets the
plane 1/(κ·cos θ) from that line. The first gives a tilt for each D, the second keeps those that agree with how much
the card is foreshortened.
"""

import math

ROUNDED = 0.93  # mm, in each direction, from where the sides would meet to the middle of the rounding: r·(1 − √½)
LONG, SHORT = 85.60 - ROUNDED, 53.98 - ROUNDED  # mm between taps half way
STRETCH_DOUBT, LENGTH_DOUBT = 0.007, 0.018  # what the other half does: ROUNDED·(1/SHORT − 1/LONG), ROUNDED/SHORT
LEAST_SIDE = 250.0  # pixels of the card's shortest side (our choice)
NEAR, FAR, STEPS = 152.4, 609.6, 18  # mm from flange to lens: 6 to 24 in, and the distances tried between
LOOKS_WITHIN = 38.1  # mm: 1.5 in from the middle to where the axis meets the flange
MOST_TILT, SIN_MOST, COS_MOST = 30.0, 0.5, 0.8660254037844386  # degrees off square that are taken


def faulty(corners: list) -> "str | None":
    """``card_not_convex`` or ``card_too_small``; None for four corners that may be a card's."""
    turns = []
    for at in range(4):
        one, two, three = corners[at], corners[(at + 1) % 4], corners[(at + 2) % 4]
        turns.append((two[0] - one[0]) * (three[1] - two[1]) - (two[1] - one[1]) * (three[0] - two[0]))
    if min(turns) <= 0.0 <= max(turns):
        return "card_not_convex"
    return "card_too_small" if shortest_side(corners) < LEAST_SIDE else None


def shortest_side(corners: list) -> float:
    """In pixels."""
    return min([_apart(corners[at], corners[(at + 1) % 4]) for at in range(4)])


def sides(corners: list) -> tuple:
    """``(first side, next side)`` in millimetres: the longer pair in the picture is the card's longer; up to a tilt of
    50° nothing else can be."""
    along = _apart(corners[0], corners[1]) + _apart(corners[2], corners[3])
    beside = _apart(corners[1], corners[2]) + _apart(corners[3], corners[0])
    return (LONG, SHORT) if along > beside else (SHORT, LONG)


def viewed(rows: list, middle: tuple) -> dict:
    """The camera's view: ``kappa``, the sine of its tilt for each millimetre of distance; ``away``, the unit vector in
    the plane that leads away from it; ``stretch``, 1/cos θ for a camera that looks at ``middle``; and the isotropic
    pixels ``(p + i·r)/(s + i·t)`` in the plane, from the middle, with their ``size``."""
    p, r = [[rows[at][of] - middle[at] * rows[2][of] for at in (0, 1)] for of in (0, 1)]
    s, t = rows[2][0], rows[2][1]
    square = s * s + t * t
    if not square > 0.0:
        s, square = 1e-9, 1e-18  # square on, in the last bit: any direction will do
    a = (p[0] * s + r[0] * t, p[1] * s + r[1] * t)
    b = (r[0] * s - p[0] * t, r[1] * s - p[1] * t)
    size = math.sqrt(b[0] * b[0] + b[1] * b[1])
    away = (-b[1] / size, b[0] / size)
    stretch = (a[0] * away[0] + a[1] * away[1]) / size
    if stretch > 0.0:
        away = (-away[0], -away[1])
    return {"kappa": square / size, "away": away, "stretch": abs(stretch), "p": p, "r": r, "s": s, "t": t,
            "size": abs(p[0] * r[1] - p[1] * r[0])}  # fmt: skip


def misfit(view: dict, distance: float) -> tuple:
    """What is left of (J − C)² = 0, real and imaginary, for a camera C at this distance that looks at the middle and
    the isotropic J: about twice the stretch and the skew of the card that the camera does not explain."""
    sine = min(view["kappa"] * distance, 0.9)  # what is beyond 30° is turned down anyway
    cosine = math.sqrt(1.0 - sine * sine)
    foot = [-one * distance * sine / cosine for one in view["away"]]
    p, r, s, t = view["p"], view["r"], view["s"], view["t"]
    far = foot[0] * foot[0] + foot[1] * foot[1] + distance * distance
    p_foot, r_foot = p[0] * foot[0] + p[1] * foot[1], r[0] * foot[0] + r[1] * foot[1]
    real = p[0] * p[0] + p[1] * p[1] - r[0] * r[0] - r[1] * r[1]
    real = real - 2.0 * (s * p_foot - t * r_foot) + far * (s * s - t * t)
    skew = p[0] * r[0] + p[1] * r[1] - s * r_foot - t * p_foot + far * s * t
    return real / view["size"], 2.0 * skew / view["size"]


def distances(view: dict, doubt: float) -> list:
    """``[(distance, tangent of the tilt)]`` at which a camera may have stood, of those tried; ``doubt`` of the misfit
    by the taps. Empty where none can."""
    allowed = 2.0 / COS_MOST * (view["kappa"] * LOOKS_WITHIN + STRETCH_DOUBT) + doubt
    found = []
    for step in range(STEPS + 1):
        distance = NEAR + (FAR - NEAR) * step / STEPS
        sine = view["kappa"] * distance
        if sine > SIN_MOST:
            break
        real, imaginary = misfit(view, distance)
        if math.sqrt(real * real + imaginary * imaginary) <= allowed:
            found.append((distance, sine / math.sqrt(1.0 - sine * sine)))
    return found


def too_tilted(view: dict) -> bool:
    """Whether a view that no distance explains is one from too far off square, rather than of no card at all."""
    foreshortened = view["stretch"] * view["stretch"] * (1.0 - SIN_MOST * SIN_MOST) > 1.0
    return bool(view["kappa"] * NEAR > SIN_MOST or (foreshortened and view["kappa"] * FAR > SIN_MOST))


def _apart(one: tuple, other: tuple) -> float:
    x, y = one[0] - other[0], one[1] - other[1]
    return math.sqrt(x * x + y * y)
