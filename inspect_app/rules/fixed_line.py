"""Where a station stands in respect of the fixed line: how far, and on which side its free end lies."""

from inspect_app.rules.refused import Refused


def place(given: dict) -> tuple[float, "int | None"]:
    """``(distance, side)``: the length of panel that moves the station, and +1 where the free end is toward the
    ridge, -1 where it is toward the eave, None where the fixed line is unknown.

    ``distance`` given says the length but not the side. With the fixed line unknown the full length is
    assumed and either direction must hold: the worst case, so an unknown is never an advantage.
    Raises Refused ``missing`` and ``beyond_panel``.
    """
    length, station, line = given.get("length"), given.get("station"), given.get("fixed_line")
    if length is not None:
        for name in ("station", "fixed_line"):
            if given.get(name) is not None and given[name] > length * (1.0 + 1e-9):
                raise Refused("beyond_panel", name, None)
    if line is not None and station is not None:
        return abs(station - line), 1 if station >= line else -1
    if given.get("distance") is not None:
        return given["distance"], None
    if length is None:
        raise Refused("missing", "length")
    return length, None
