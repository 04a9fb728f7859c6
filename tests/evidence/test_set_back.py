"""A report after a restoration says what it cannot know, and one that hides it is found out."""

from inspect_app.entry.format import parse
from inspect_app.entry.statement import entry_receipt, format_statement, parse_statement, restoration
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from tests.evidence.record import AT, files, made

RECORD = made()
SERVER, SIGNED = RECORD.server, RECORD.signed
KEPT = SIGNED.receipts[:2]
LAST = parse_statement(KEPT[-1])
BACK = format_statement(restoration(1000, AT, int(LAST.payload["seq"]), LAST.digest), SERVER)


def chain(first, names=True):
    """The kept receipts, then one for each other entry, numbered from ``first``."""
    tokens = list(KEPT)
    for n, entry in enumerate(SIGNED.entries[2:], 2):
        prev = parse_statement(tokens[-1]).digest
        payload = entry_receipt(first + n, AT, RECORD.job, n, prev, parse(entry).digest)
        tokens.append(format_statement(payload | ({"restored": parse_statement(BACK).digest} if names else {}), SERVER))
    return tokens


def facts(receipts, enrolments=()):
    found = entry_facts(files(RECORD, receipts=receipts, enrolments=[*SIGNED.enrolments, *enrolments]), RECORD.contents)
    return {one.name: one for one in found}


def test_after_a_restoration_the_chain_is_whole_and_what_is_missing_is_not_determinable():
    told = facts(chain(1000), [BACK])
    assert told["never_set_back"].status == UNKNOWN
    assert told["never_set_back"].about == {"count": 1, "at": AT, "last": LAST.payload["seq"]}
    assert {told[name].status for name in ("keys_enrolled", "receipts_whole", "entries_receipted")} == {HOLDS}


def test_without_one_there_is_nothing_to_doubt():
    assert facts(SIGNED.receipts)["never_set_back"].status == HOLDS


def test_a_restoration_left_out_not_named_or_not_followed_is_found_out():
    for receipts, enrolments in (
        (chain(1000), []),  # named, and not enclosed
        (chain(1000, names=False), [BACK]),  # enclosed, and not named
        (chain(500), [BACK]),  # a number of the time that was undone
        (chain(500, names=False), [BACK]),
    ):
        told = facts(receipts, enrolments)["never_set_back"]
        assert (told.status, told.reason) == (FAILS, "restoration_hidden")
