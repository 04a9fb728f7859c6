"""Turn what was seen of a screw in its slot into an offset toward the ridge with a bound."""

from inspect_app.rules.answer import measured, reason
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit

LEAST_SPAN = 250.0  # pixels of slot below which the taps decide nothing (our choice)
TAP_ERROR = 3.0  # pixels, our choice: a knuckle under a loupe
TWO_SIGMA = 1.632993161855452  # 2·√(2/3): two deviations of three taps, each anywhere within ±1, screw at an end
HEAD_HEIGHT = 0.06  # of an inch that a pancake head stands proud (common practice, no source)
MOST_TILT = 20.0  # degrees off square; also what is assumed where nobody measured it
LEAST_DISTANCE = 6.0  # inches from camera to slot, nearer than which phones hardly focus (our choice)


def usable(given: dict) -> "dict | None":
    """The reason why nothing can be read, or None: no reading at all, slot too small in the photo, photo taken
    too far off square. Raises Refused ``taps_together`` for two taps on one spot."""
    if given["taps"] is None:
        return reason("no_reading") if given["end_hidden"] is None and given["third"] is None else None
    span = _span(given["taps"])
    if not span > 0.0:
        raise Refused("taps_together", "taps", None)
    if span < LEAST_SPAN:
        return reason("photo_too_small", {"span": measured(span, "px"), "least": measured(LEAST_SPAN, "px")})
    if given["tilt"] is not None and given["tilt"] > 12.0 * _TAN_MOST_TILT * (1.0 + 1e-9):
        return reason("photo_too_tilted", {"most": measured(MOST_TILT, "deg")})
    return None


def read_offset(given: dict, play: float) -> tuple[float, float]:
    """``(offset toward the ridge, bound)`` in the slot's unit, without the temperature's share.

    Taps: the screw's projection on the slot's axis, as a share of the slot's length. An end hidden under the
    head: the screw is at least slot/2 − head/2 from the middle and at most the half-play. A third: of the play.
    """
    if given["taps"] is not None:
        return _from_taps(given)
    if given["end_hidden"] is not None:
        if given["head"] is None:
            raise Refused("missing", "head")
        near = min(max((given["slot"] - given["head"]) / 2.0, -play), play)
        return _between(near, play, 1.0 if given["end_hidden"] == "ridge" else -1.0)
    if given["third"] == "middle":
        return 0.0, play / 3.0
    return _between(play / 3.0, play, 1.0 if given["third"] == "toward_ridge" else -1.0)


_TAN_MOST_TILT = 0.36397023426620234  # tan 20°


def _from_taps(given: dict) -> tuple[float, float]:
    taps, slot = given["taps"], given["slot"]
    ridge, eave, screw = taps["ridge_end"], taps["eave_end"], taps["screw"]
    along = (eave[0] - ridge[0], eave[1] - ridge[1])
    square = along[0] * along[0] + along[1] * along[1]
    share = ((screw[0] - ridge[0]) * along[0] + (screw[1] - ridge[1]) * along[1]) / square
    error = TAP_ERROR if given["tap_error"] is None else given["tap_error"]
    tilt = _TAN_MOST_TILT if given["tilt"] is None else given["tilt"] / 12.0
    length = SYSTEMS[given["units"]]["length"]
    height = given["head_height"]
    if height is None:
        height = change_unit(HEAD_HEIGHT, "in", length)
    near = change_unit(LEAST_DISTANCE, "in", length)
    tapped = TWO_SIGMA * error / _span(taps) * slot
    # The nearer end looks longer, and a standing head leans over the slot: both by the same tilt.
    tilted = slot * slot * tilt / (1.0 + tilt * tilt) ** 0.5 / (4.0 * near) + height * tilt
    beside = height * slot / 2.0 / near  # and it leans away from where the camera looks, even square on
    return (0.5 - share) * slot, (tapped * tapped + tilted * tilted + beside * beside) ** 0.5


def beside(given: dict) -> float:
    """How far off the slot's axis the taps put the screw. More than a shank (and the bound) no slot is wide: taps in
    the wrong order, or on another screw. Nothing without taps."""
    taps = given["taps"]
    if taps is None:
        return 0.0
    ridge, eave, screw = taps["ridge_end"], taps["eave_end"], taps["screw"]
    cross = (eave[0] - ridge[0]) * (screw[1] - ridge[1]) - (eave[1] - ridge[1]) * (screw[0] - ridge[0])
    span = _span(taps)
    return float(abs(cross) / span / span * given["slot"])


def _between(near: float, far: float, sign: float) -> tuple[float, float]:
    return sign * (near + far) / 2.0, (far - near) / 2.0


def _span(taps: dict) -> float:
    ridge, eave = taps["ridge_end"], taps["eave_end"]
    return float(((eave[0] - ridge[0]) ** 2 + (eave[1] - ridge[1]) ** 2) ** 0.5)
