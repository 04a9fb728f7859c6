"""Whether the server was ever set back to a backup, so that something it had received may be missing.

Fact ``never_set_back``: no receipt names a restoration and none is enclosed. Where there was one it is not determinable
whether everything is here that was received between that backup and the restoration: phones send again what they hold,
and what no phone holds any more is gone. It fails when a receipt names a restoration that is not enclosed, when
one after a restoration does not name it, or when a receipt bears a number that only the lost time can have given.
"""

from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import Statement
from inspect_app.evidence import once
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.tokens import Tokens

NAME = "never_set_back"


def set_back_fact(tokens: Tokens) -> Fact:
    """The fact above. Receipts that do not read are counted by ``receipts_whole``."""
    said = sorted((one for one in tokens.enrolments if one.kind == "restoration"), key=_seq)
    wrong = [one for one in _read(tokens.receipts) if one.payload.get("restored") != _named(one, said)]
    if wrong:
        return Fact(NAME, FAILS, "restoration_hidden", {"count": len(wrong), "n": wrong[0].payload["n"]})
    if not said:
        return Fact(NAME, HOLDS)
    newest = said[-1].payload
    return Fact(NAME, UNKNOWN, "set_back", {"count": len(said), "at": newest["at"], "last": newest["last"]})


def _named(receipt: Statement, said: list[Statement]) -> str | None:
    """What a receipt of that number has to name: the newest restoration before it; ``lost`` for a number that was given
    in the time that a restoration undid."""
    if any(int(str(one.payload["last"])) < _seq(receipt) < _seq(one) for one in said):
        return "lost"
    before = [one.digest for one in said if _seq(one) < _seq(receipt)]
    return before[-1] if before else None


def _read(lines: list[bytes]) -> list[Statement]:
    found = []
    for line in lines:
        try:
            found.append(once.statement(line))
        except Refused:
            continue
    return [one for one in found if one.kind == "receipt"]


def _seq(statement: Statement) -> int:
    return int(str(statement.payload["seq"]))
