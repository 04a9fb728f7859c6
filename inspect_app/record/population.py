"""The panels that a lot is drawn from, in canonical order: by area id, then by number.

Only a panel with a seam hides anything, and every panel of an area has one but the last, which is finished at an edge:
a line across an area that is not its edge meets the roof on both sides.
"""

import hashlib

from inspect_app.record.base64url import encode

MOST = 20000  # panels of one lot: beyond is a slip of the hand, and no list for a phone


def rows_of(population: object) -> "list | None":
    """``[(area, from, to)]`` in canonical order; None for rows that are no population: none at all, one that ends
    before it begins, panels named twice, or too many."""
    rows = []
    for row in population if isinstance(population, list) else []:
        if not isinstance(row, dict) or not isinstance(row.get("area"), str):
            return None
        low, high = row.get("from"), row.get("to")
        if type(low) is not int or type(high) is not int or not 1 <= low <= high:
            return None
        rows.append((row["area"], low, high))
    rows.sort()
    for at in range(1, len(rows)):
        if rows[at][0] == rows[at - 1][0] and rows[at][1] <= rows[at - 1][2]:
            return None
    return rows if rows and size_of(rows) <= MOST else None


def size_of(rows: list) -> int:
    return sum([high - low + 1 for _, low, high in rows])


def member(rows: list, index: int) -> tuple:
    """``(area, panel)`` of a place in the population, counted from 0."""
    for area, low, high in rows:
        if index <= high - low:
            return area, low + index
        index -= high - low + 1
    raise IndexError("beyond the population")


def digest_of(rows: list) -> str:
    """Base64url SHA-256 of the lines ``<area id> <panel number>``, each with its line feed."""
    told = hashlib.sha256()
    for area, low, high in rows:
        told.update("".join([area + " " + str(panel) + "\n" for panel in range(low, high + 1)]).encode())
    return encode(told.digest())
