"""Read a screw in its slot off a picture that holds a card lying in the flange's plane."""

import math

from inspect_app.rules.answer import measured, reason
from inspect_app.rules.card_view import (
    LEAST_SIDE,
    LENGTH_DOUBT,
    LOOKS_WITHIN,
    MOST_TILT,
    NEAR,
    distances,
    faulty,
    misfit,
    shortest_side,
    sides,
    too_tilted,
    viewed,
)
from inspect_app.rules.homography import placed, plane_from_picture
from inspect_app.rules.slot_reading import HEAD_HEIGHT, TAP_ERROR
from inspect_app.rules.unit import SYSTEMS, change_unit

TWO_SIGMA = 1.1547005383792515  # 2/√3: two deviations of a tap anywhere within ±1
THREE_SIGMA = 1.5 * TWO_SIGMA  # where a picture is turned down, so that few good ones are
SLOT_MADE_TO = 0.8  # mm by which a punched slot, and taps on its round ends, may differ (our choice)


def read_card(given: dict) -> dict:
    """``{"toward_ridge", "bound", "beside"}`` in the slot's unit, or ``{"reason"}`` why nothing can be read.

    ``toward_ridge``: the share of the slot at which the screw stands in the flange's plane, with the
    head's parallax taken off; ``beside``: off the slot's axis. ``bound``: each tap's own share of it for an error
    anywhere within ``tap_error``, and what of the parallax the camera's place leaves open.
    """
    length = SYSTEMS[given["units"]]["length"]
    marks = list(given["card"])
    marks.extend([given["taps"][name] for name in ("ridge_end", "eave_end", "screw")])
    fault = _fault(marks)
    if fault is not None:
        return {"reason": fault}
    card = sides(marks[:4])
    scene = _scene(marks, card)
    moved = _moved(marks, card, TAP_ERROR if given["tap_error"] is None else given["tap_error"])
    if scene is None or None in moved:
        return {"reason": reason("card_shape")}
    misfits = [misfit(one["view"], NEAR) for one in moved]
    best = misfit(scene["view"], NEAR)
    doubt = THREE_SIGMA * _together([one[at] - best[at] for one in misfits for at in (0, 1)])
    stood = distances(scene["view"], doubt)
    if not stood:
        steep = reason("photo_too_tilted", {"most": measured(MOST_TILT, "deg")})
        return {"reason": steep if too_tilted(scene["view"]) else reason("card_shape")}
    slot = change_unit(given["slot"], length, "mm")
    tolerance = THREE_SIGMA * _together([one["long"] - scene["long"] for one in moved])
    tolerance = tolerance + SLOT_MADE_TO + LENGTH_DOUBT * slot
    if abs(scene["long"] - slot) > tolerance:
        return {"reason": reason("slot_length_differs", {
            "found": measured(change_unit(scene["long"], "mm", length), length),
            "slot": measured(given["slot"], length)})}  # fmt: skip
    height = given["head_height"]
    height = change_unit(HEAD_HEIGHT, "in", "mm") if height is None else change_unit(height, length, "mm")
    leans = [_lean(scene, distance, tangent) for distance, tangent in stood]
    middle = stood[len(stood) // 2][0]
    apart = [_offset(one, slot, height, middle) - _offset(scene, slot, height, middle) for one in moved]
    tapped = TWO_SIGMA * _together(apart)
    leaned = height * ((max(leans) - min(leans)) / 2.0 + LOOKS_WITHIN / stood[0][0])
    found = {
        "toward_ridge": (0.5 - scene["share"]) * slot + height * (min(leans) + max(leans)) / 2.0,
        "bound": math.sqrt(tapped * tapped + leaned * leaned),
        "beside": scene["beside"] * slot,
    }
    return {name: change_unit(found[name], "mm", length) for name in found}


def _fault(marks: list) -> "dict | None":
    code = faulty(marks[:4])
    if code != "card_too_small":
        return None if code is None else reason("card_not_convex")
    span, least = measured(shortest_side(marks[:4]), "px"), measured(LEAST_SIDE, "px")
    return reason("card_too_small", {"span": span, "least": least})


def _scene(marks: list, card: tuple) -> "dict | None":
    """``view``; ``long`` the slot in millimetres; ``share`` and ``beside`` of the screw along and off it, in slots;
    ``screw`` from the middle and ``axis``. None where a mark lies beyond the plane's horizon."""
    rows = plane_from_picture(marks[:4], *card)
    places = []
    for mark in marks:
        place = placed(rows, mark)
        if place is None:
            return None
        places.append(place)
    one, two, three, four, ridge, eave, screw = places
    x, y = [(one[at] + two[at] + three[at] + four[at]) / 8.0 + (ridge[at] + eave[at]) / 4.0 for at in (0, 1)]
    middle = (x, y)
    x, y = eave[0] - ridge[0], eave[1] - ridge[1]
    long = math.sqrt(x * x + y * y)
    if not long > 0.0:
        return None
    axis = (x / long, y / long)
    x, y = screw[0] - ridge[0], screw[1] - ridge[1]
    return {
        "view": viewed(rows, middle),
        "long": long,
        "share": (x * axis[0] + y * axis[1]) / long,
        "beside": abs(x * axis[1] - y * axis[0]) / long,
        "screw": (screw[0] - middle[0], screw[1] - middle[1]),
        "axis": axis,
    }


def _moved(marks: list, card: tuple, error: float) -> list:
    """The scene with each coordinate of each mark off by ``error``, one after the other."""
    scenes = []
    for mark in range(len(marks)):
        for step in ((error, 0.0), (0.0, error)):
            other = list(marks)
            other[mark] = (marks[mark][0] + step[0], marks[mark][1] + step[1])
            scenes.append(_scene(other, card))
    return scenes


def _lean(scene: dict, distance: float, tangent: float) -> float:
    """How far toward the eave a thing seems to stand, for each millimetre that it stands above the plane."""
    away, axis, screw = scene["view"]["away"], scene["axis"], scene["screw"]
    beside = (screw[0] * axis[0] + screw[1] * axis[1]) / distance
    return float(beside + tangent * (away[0] * axis[0] + away[1] * axis[1]))


def _offset(scene: dict, slot: float, height: float, distance: float) -> float:
    return float((0.5 - scene["share"]) * slot + height * _lean(scene, distance, scene["view"]["kappa"] * distance))


def _together(parts: list) -> float:
    """As independent ones go together."""
    square = 0.0
    for part in parts:
        square = square + part * part
    return math.sqrt(square)
