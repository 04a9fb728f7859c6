"""``plan@1``: how many of a lot to look at, and with how many found it is accepted (MIL-STD-105E, Tables I, II-A, II-B,
II-C and the notes below them). An arrow leads to another letter and to its sample size. A sample as large as the lot:
look at all. A lot of one stands in no row: it is looked at, and accepted when nothing is found (ours).
"""

from inspect_app.rules.answer import answer, measured, said
from inspect_app.rules.decimal_text import read_decimal
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused
from inspect_app.rules.sampling_table import AQLS, LETTERS, LEVELS, MASTERS

INSPECTIONS = ("normal", "tightened", "reduced")
INPUTS = {
    "lot": wanted("integer", above_zero=True),
    "level": wanted("choice", choices=LEVELS),
    "aql": wanted("text"),
    "inspection": wanted("choice", choices=INSPECTIONS),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``letter n accept reject``; ``understood`` tells the letter of Table I and whether all are looked at. Raises
    Refused ``unknown_aql``."""
    lot = int(given["lot"])
    found = plan(lot, given["level"], given["aql"], given["inspection"])
    values = {name: measured(found[name], "") for name in ("n", "accept", "reject")}
    values["letter"] = said(found["letter"])
    return answer(values, understood={"letter_first": found["letter_first"], "all": found["n"] == lot})


def plan(lot: int, level: str, aql: str, inspection: str) -> dict:
    """``{"letter", "letter_first", "n", "accept", "reject"}`` for a lot of at least 1; ``letter_first`` is the one of
    Table I. Raises Refused ``unknown_aql``."""
    first = letter_of(lot, level)
    column = _column(aql)
    if lot == 1:
        return {"letter": first, "letter_first": first, "n": 1, "accept": 0, "reject": 1}
    letter, sample, cell = _after_arrows(MASTERS[inspection], first, column)
    parts = cell.split("/")
    accept = int(parts[0])
    reject = int(parts[1]) if len(parts) == 2 else accept + 1
    return {"letter": letter, "letter_first": first, "n": min(sample, lot), "accept": accept, "reject": reject}


def letter_of(lot: int, level: str) -> str:
    """The code letter of Table I."""
    at = LEVELS.index(level)
    for most, letters in LETTERS:
        if most is None or lot <= most:
            return letters[at]
    raise Refused("out_of_range", "lot", lot)


def _column(aql: str) -> int:
    """Of an AQL as people write it: ``1`` and ``1.0`` are one."""
    if aql in AQLS:  # as the table writes it
        return AQLS.index(aql)
    try:
        number = read_decimal(aql, "aql")
    except Refused:
        raise Refused("unknown_aql", "aql", aql) from None
    for at in range(len(AQLS)):
        if read_decimal(AQLS[at], "aql") == number:
            return at
    raise Refused("unknown_aql", "aql", aql)


def _after_arrows(rows: tuple, letter: str, column: int) -> tuple:
    """``(letter, sample, cell)`` of the plan that the arrows lead to."""
    at = [row[0] for row in rows].index(letter)
    while True:
        letter, sample, cells = rows[at]
        cell = cells.split(" ")[column]
        if cell == "v":
            at += 1
        elif cell == "^":
            at -= 1
        else:
            return letter, sample, cell
