"""Bodies of database transactions in the phone's code, and what in them would let the transaction end.

A transaction ends by itself once nothing of it is asked any more (Indexed Database API 3.0, "transaction lifetime"):
awaiting the network, a timer, a file or WebCrypto inside it loses what comes after.
"""

import re

from tests.architecture.javascript_imports import COMMENT

# A function that is given a transaction: its first parameter is called ``tx``, typed in a comment or not.
TAKES_TX = re.compile(r"(?:\bfunction\s+(\w+)\s*)?\(\s*tx\b[^()]*(?:\([^()]*\)[^()]*)*\)\s*(=>)?\s*")
GIVEN = re.compile(r"\bwithDb\(")
OTHER = re.compile(
    r"\b(?:fetch|setTimeout|call|callAs|sha256Hex|digestOf|signEntry|verifyReceipt|verifiedReceipt|withDb|readMeta|writeMeta)\("
    r"|\bcrypto\.|\.arrayBuffer\(|\.text\(|new Promise\b|\bimport\("
)
# What may be awaited: a request of the transaction, a function that is given it, several of both at once.
OWN = re.compile(r"await\s+\(?\s*(?:tx\.|\w+\(tx\b|Promise\.all\(\[)")


def bodies(source: str) -> list[str]:
    """Every function of ``source`` whose first parameter is ``tx``."""
    bare = COMMENT.sub(lambda found: found[1] or "", source)
    found = []
    for start in TAKES_TX.finditer(bare):
        if start[1] or start[2]:
            found.append(_body(bare, start.end()))
    return found


def _body(bare: str, at: int) -> str:
    """From ``at`` to the end of the block or expression that begins there."""
    depth = 0
    for end in range(at, len(bare)):
        sign = bare[end]
        if sign in "([{":
            depth += 1
        elif sign in ")]}":
            depth -= 1
            if depth < 0 or (depth == 0 and bare[at] == "{"):
                return bare[at : end + (depth == 0)]
        elif depth == 0 and sign in ",\n" and end > at:
            return bare[at:end]
    return bare[at:]


def faults(source: str) -> list[str]:
    """What in the transactions of ``source`` is no request of theirs; and a ``withDb`` whose function is not seen."""
    wrong = []
    for body in bodies(source):
        wrong += [found[0] for found in OTHER.finditer(body)]
        for wait in re.finditer(r"\bawait\b", body):
            if not OWN.match(body, wait.start()):
                wrong.append(body[wait.start() : wait.start() + 60].split("\n")[0])
    bare = COMMENT.sub(lambda found: found[1] or "", source)
    given = len(GIVEN.findall(bare)) - len(re.findall(r"function withDb\(", bare))
    seen = len([one for one in TAKES_TX.finditer(bare) if one[2]])
    if seen < given:
        wrong.append(f"{given} calls of withDb, {seen} functions of tx")
    return wrong
