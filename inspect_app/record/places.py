"""The drawn places of one panel: stations of its seam, chosen by the lot's ticket."""

from inspect_app.record.base64url import decode
from inspect_app.rules.draw import draw, panel_seed, seed_of
from inspect_app.rules.refused import Refused
from inspect_app.rules.roof import read_roof
from inspect_app.rules.stations import station_count, stations_at

MOST_PLACES = 50  # of one panel: more is a slip of the hand, and no walk for anybody
GRAIN = 10000  # of the roof's own unit: a tenth of a millimetre in metres, a thousandth of an inch in feet


class Roofs:
    """The roofs that lots were drawn on: by the digests of the area's and the assembly's entries, each read once.

    ``bodies``: ``{digest: body}``. A version that has not arrived, or that nothing can be laid out of, is no roof.
    """

    def __init__(self, bodies: dict) -> None:
        self.bodies = bodies
        self._read: dict = {}
        self._told: dict = {}

    def once(self, lot: dict, area: str, what):  # type: ignore[no-untyped-def]
        """``what(roof)``, asked once of each roof."""
        row = row_of(lot, area)
        name = (row.get("area_entry"), row.get("assembly_entry"), what)
        if name not in self._told:
            self._told[name] = what(self.of(lot, area))
        return self._told[name]

    def of(self, lot: dict, area: str):  # type: ignore[no-untyped-def]  # a Roof or None
        row = row_of(lot, area)
        name = (row.get("area_entry"), row.get("assembly_entry"))
        if name not in self._read:
            body = self.bodies.get(name[0])
            try:
                self._read[name] = read_roof(body, self.bodies.get(name[1])) if body else None
            except Refused:
                self._read[name] = None
        return self._read[name]


def row_of(lot: dict, area: str) -> dict:
    """The row of the lot's population that names this area."""
    for row in lot.get("population") or []:
        if row.get("area") == area:
            found: dict = row
            return found
    return {}


def lot_seed(lot_id: str, body: dict) -> "bytes | None":
    """The seed of a lot's draw; None where its ticket is no ticket."""
    random = decode((body.get("ticket") or {}).get("random") or "")
    return seed_of(random, lot_id) if random is not None and len(random) == 32 else None


def places_of(roof, seed: bytes, panel: int, wanted: int) -> list:  # type: ignore[no-untyped-def]
    """``[{"index", "from_low_end", "zone", "state": "open", "station": None}]`` in the order drawn: as many as
    ``wanted``, ``MOST_PLACES`` at most, or all that the panel has. None on a panel that this roof does not have, or
    where the roof is not known."""
    if roof is None:
        return []
    try:
        there = station_count(roof, panel)
    except Refused:
        return []
    found = []
    drawn = draw(there, max(0, min(wanted, there, MOST_PLACES)), panel_seed(seed, panel))
    for place in stations_at(roof, panel, drawn):
        found.append({
            "index": place["index"], "from_low_end": {"value": _decimal(place["from_low_end"]), "unit": roof.unit},
            "zone": place["zone"], "state": "open", "station": None,
        })  # fmt: skip
    return found


def _decimal(number: float) -> str:
    """Written out by whole numbers: the two interpreters print floats each in its own way."""
    whole = int(number * GRAIN + 0.5)
    digits = str(whole % GRAIN)
    digits = "0" * (len(str(GRAIN)) - 1 - len(digits)) + digits
    while digits.endswith("0"):
        digits = digits[:-1]
    return str(whole // GRAIN) + ("." + digits if digits else "")
