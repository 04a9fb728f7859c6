"""``switch@1``: which inspection a series of lots stands under (MIL-STD-105E 4.7 and 4.8).

- normal → tightened: 2 of up to 5 consecutive lots not accepted;
- tightened → normal: 5 consecutive lots accepted;
- normal → reduced: 10 consecutive lots accepted, where reduced inspection was allowed. The limit number of Table VIII
  is not asked for: ANSI Z1.4 8.5 lets it be dropped when agreed, and the table was not to be had;
- reduced → normal: a lot not accepted, or one between accept and reject, which is accepted;
- tightened → stopped: 5 lots not accepted since it began. Only corrective action starts again, under tightened.

Lots are those of original inspection; what was reworked and offered again is no lot of its own. A lot that could not be
determined breaks a run of accepted lots and counts for nothing else. The count begins anew after every switch.
"""

from inspect_app.rules.answer import answer, measured, reason, said
from inspect_app.rules.inputs import wanted
from inspect_app.rules.refused import Refused

STATES = ("normal", "tightened", "reduced", "stopped")
LETTERS = ("A", "R", "M", "N")
INPUTS = {
    "history": wanted("letters"),
    "inspection": wanted("choice", choices=STATES),
    "reduced": wanted("choice", required=False, choices=("allowed", "not")),
}
ORDER = ()


def judge(given: dict, system: str) -> dict:
    """``inspection`` now, ``because`` (a code, its words in ``reason``) and ``since``, the number of lots before the
    present state. Raises Refused ``not_a_lot``."""
    found = switched(given["history"], given["inspection"], given["reduced"] == "allowed")
    values = {
        "inspection": said(found["inspection"]),
        "because": said(found["because"]["code"]),
        "since": measured(found["since"], ""),
    }
    return answer(values, None, found["because"])


def switched(history: list, inspection: str, reduced_allowed: bool) -> dict:
    """``{"inspection", "because", "since"}`` after the lots of ``history``, oldest first, begun under ``inspection``.

    A lot is ``A`` accepted, ``R`` not accepted, ``M`` accepted between the two numbers of reduced inspection (elsewhere
    as ``A``), ``N`` not determinable. ``because`` is ``{"code", "facts"}`` of the last switch; ``since`` how many lots
    stand before the present state. Raises Refused ``not_a_lot``.
    """
    state, because, since = inspection, _begun(inspection), 0
    series = _Series()
    for at in range(len(history)):
        lot = history[at]
        if lot not in LETTERS:
            raise Refused("not_a_lot", "history[" + str(at) + "]", lot)
        series.add(lot)
        turn = _turn(state, lot, series, reduced_allowed)
        if turn is not None:
            state, because = turn
            since, series = at + 1, _Series()
    return {"inspection": state, "because": because, "since": since}


class _Series:
    """The lots since the last switch, as far as the rules ask."""

    def __init__(self) -> None:
        self.accepted_running = 0
        self.not_accepted = 0
        self.last = []  # type: ignore[var-annotated]  # of five: whether each was not accepted

    def add(self, lot: str) -> None:
        if lot == "N":
            self.accepted_running = 0
            return
        bad = lot == "R"
        self.accepted_running = 0 if bad else self.accepted_running + 1
        self.not_accepted += 1 if bad else 0
        self.last = self.last[-4:] + [bad]  # noqa: RUF005  # no unpacking in a display on the phone

    def within(self) -> int:
        """Of how many lots in a row, the newest last, two were not accepted; 0 where no two were."""
        marks = [at for at in range(len(self.last)) if self.last[at]]
        return len(self.last) - marks[-2] if len(marks) >= 2 else 0


def _begun(state: str) -> dict:
    if state == "stopped":
        return reason("switch_stopped")
    return reason("switch_none")


def _turn(state: str, lot: str, series: _Series, reduced_allowed: bool) -> "tuple | None":
    """``(state, because)`` where a rule calls for another state."""
    if state == "normal":
        if lot == "R" and series.within():
            return "tightened", reason("switch_two_not_accepted", {"lots": series.within()})
        if reduced_allowed and series.accepted_running >= 10:
            return "reduced", reason("switch_ten_accepted")
    elif state == "tightened":
        if series.not_accepted >= 5:
            return "stopped", reason("switch_five_not_accepted")
        if series.accepted_running >= 5:
            return "normal", reason("switch_five_accepted")
    elif state == "reduced":
        if lot == "R":
            return "normal", reason("switch_reduced_not_accepted")
        if lot == "M":
            return "normal", reason("switch_reduced_between")
    return None
