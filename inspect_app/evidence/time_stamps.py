"""Whether somebody else says when a report was signed, signature by signature.

Fact ``time_stamped``: it holds where an authority's token (RFC 3161) stamps this very signature and agrees with the
time that the signer gives. Without a token nobody but the signer says when: not determinable, unless the signed part
says that there was one. Nor is it where the signed part does not say so: the token stands where no signature covers it,
and whoever has the file can put one by an authority of their own there. Where the two times differ it is not
determinable which of the clocks was wrong, or why.
"""

from collections.abc import Sequence
from datetime import datetime, timedelta
from typing import Any

from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN, Fact
from inspect_app.evidence.signature import Signature

NAME = "time_stamped"
APART = timedelta(minutes=10)  # ours: a signature is stamped within seconds, clocks of servers differ by less


def stamp_facts(signatures: Sequence[Signature]) -> list[Fact]:
    """One fact for each signature, in their order; of a file without any, one that fails."""
    return [_fact(one) for one in signatures] or [Fact(NAME, FAILS, "no_seal")]


def _fact(one: Signature) -> Fact:
    about: dict[str, Any] = {"field": one.field}
    if one.stamp is None:
        if one.stamp_said:
            return Fact(NAME, FAILS, "time_stamp_gone", about)
        broken = next((code for code in one.reasons if code.startswith("time_stamp")), None)
        return Fact(NAME, FAILS, broken, about) if broken else Fact(NAME, UNKNOWN, "no_time_stamp", about)
    about |= {"authority": one.stamp.name, "stamped": one.stamp.time, "fingerprint": one.stamp.fingerprint}
    if one.intact is not True or one.container is False:
        codes = [code for code in one.reasons if code.startswith("time_stamp")]
        return Fact(NAME, FAILS, codes[0] if codes else "time_stamp_other", about)
    about["signed"] = one.time
    if not one.stamp_said:
        return Fact(NAME, UNKNOWN, "time_stamp_unsaid", about)
    if one.time is None or abs(datetime.fromisoformat(one.time) - datetime.fromisoformat(one.stamp.time)) > APART:
        return Fact(NAME, UNKNOWN, "times_differ", about)
    return Fact(NAME, HOLDS, None, about)
