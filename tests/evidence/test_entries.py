"""The enclosed entries: whatever is changed, left out, added, moved or forged breaks a fact, and says which."""

import json
import random

import pytest
from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.statement import format_statement, revocation
from inspect_app.evidence.entries import REST, entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from tests.evidence.record import AT, answer, author, contents, counted, enrol, files, made, receipts, sign

SEED = 20261125
RECORD = made()
CHIEF, FOREMAN = RECORD.authors
ENTRIES, RECEIPTS, ENROLMENTS = RECORD.signed.entries, RECORD.signed.receipts, RECORD.signed.enrolments
FAILED = parse(ENTRIES[2]).payload["subject"]


def failing(told=None, **changed):
    """The names of the facts that fail when the enclosed files are ``changed``."""
    facts = entry_facts(files(RECORD, **changed), RECORD.contents if told is None else told)
    return {fact.name for fact in facts if fact.status == FAILS}


def test_an_honest_record_holds_in_every_fact():
    facts = entry_facts(files(RECORD), RECORD.contents)
    assert [(fact.name, fact.status) for fact in facts] == [(n, HOLDS) for n in ("record_enclosed", *REST)]


def test_where_nothing_is_enclosed_nothing_is_claimed():
    assert {fact.status for fact in entry_facts(None, None)} == {UNKNOWN}


@pytest.mark.parametrize("name", sorted(set(files(RECORD)) - {"contents.json"}))
def test_a_record_without_one_of_its_files_cannot_be_read(name):
    left = {other: data for other, data in files(RECORD).items() if other != name}
    assert entry_facts(left, RECORD.contents)[0].status == FAILS


def flips(share):
    """Facts are asked after one bit of one file was turned, for ``share`` of all bytes."""
    chance = random.Random(SEED)
    honest = files(RECORD)
    for name in sorted(set(honest) - {"contents.json"}):
        for at in range(len(honest[name])):
            if chance.random() < share:
                data = bytearray(honest[name])
                data[at] ^= 1 << chance.randrange(8)
                yield name, at, honest[name], bytes(data)


def unnoticed(share):
    missed = []
    for name, at, before, data in flips(share):
        facts = entry_facts(files(RECORD) | {name: data}, RECORD.contents)
        # White space in the key's JSON says nothing.
        same = name == "server-key.json" and loads(data) == json.loads(before)
        if not any(fact.status == FAILS for fact in facts) and not same:
            missed.append((name, at))
    return missed


def loads(data):
    try:
        return json.loads(data)
    except ValueError:
        return None


def test_a_turned_bit_of_an_enclosed_file_breaks_a_fact():
    assert unnoticed(0.04) == []


@pytest.mark.soak
def test_a_turned_bit_of_any_byte_of_the_enclosed_files_breaks_a_fact():
    assert unnoticed(1) == []


@pytest.mark.parametrize("which", ["entries", "receipts", "enrolments"])
def test_a_line_left_out_doubled_or_moved_breaks_a_fact(which):
    whole = getattr(RECORD.signed, which)
    for at in range(len(whole)):
        assert failing(**{which: whole[:at] + whole[at + 1 :]}), ("left out", at)
    if which == "enrolments":
        return  # twice the same tie, or in another order, says the same
    for at in range(len(whole) - (which == "receipts")):
        if which == "entries":
            assert failing(entries=[*whole[: at + 1], *whole[at:]]), ("doubled", at)
        other = list(whole)
        other[at], other[at - 1] = other[at - 1], other[at]
        assert failing(**{which: other}), ("moved", at)


def test_everything_after_some_moment_left_out_with_its_receipts_shows_against_the_printed_heads():
    assert failing(entries=ENTRIES[:3], receipts=RECEIPTS[:3]) == {"heads_match", "answers_follow"}
    assert failing(receipts=RECEIPTS[:-1]) == {"heads_match"}


def test_whoever_holds_a_phone_s_key_cannot_slip_in_an_entry_without_the_server():
    head = parse(ENTRIES[4]).digest
    forged = sign(FOREMAN, RECORD.job, "answer", FAILED, 4, head, answer(FAILED, "pass"), (parse(ENTRIES[2]).digest,))
    assert {"entries_receipted", "heads_match", "answers_follow"} <= failing(entries=[*ENTRIES, forged])
    instead = [*ENTRIES[:2], sign(FOREMAN, RECORD.job, "answer", FAILED, 1, parse(ENTRIES[1]).digest,
                                  answer(FAILED, "pass")), *ENTRIES[3:]]  # fmt: skip
    assert {"entries_receipted", "chains_whole", "answers_follow"} <= failing(entries=instead)


def test_a_whole_record_under_another_server_s_key_is_not_the_one_that_the_report_prints():
    other = ec.generate_private_key(ec.SECP256R1())
    everything = {
        "server_key": public_jwk(other),
        "receipts": receipts(other, RECORD.job, ENTRIES),
        "enrolments": [enrol(other, 1, CHIEF), enrol(other, 2, FOREMAN)],
    }
    assert failing(**everything) == {"heads_match"}
    del everything["server_key"]
    assert {"keys_enrolled", "entries_signed", "receipts_whole"} <= failing(**everything)


def test_the_key_of_one_person_cannot_sign_for_another():
    posing = FOREMAN._replace(person=CHIEF.person)
    forged = sign(posing, RECORD.job, "answer", FAILED, 1, parse(ENTRIES[1]).digest, answer(FAILED, "pass"))
    facts = entry_facts(files(RECORD, entries=[*ENTRIES[:2], forged, *ENTRIES[3:]]), RECORD.contents)
    told = next(fact for fact in facts if fact.name == "entries_signed")
    assert (told.status, told.about["line"], told.about["code"]) == (FAILS, 3, "wrong_person")


def test_a_receipt_among_the_enrolments_is_no_enrolment():
    assert failing(enrolments=[*ENROLMENTS, RECEIPTS[0]]) == {"keys_enrolled"}


def test_a_report_that_says_better_than_its_entries_or_less_is_found():
    better = [one | {"result": "pass"} for one in RECORD.contents["answers"]]
    assert failing(RECORD.contents | {"answers": better}) == {"answers_follow"}
    assert failing(RECORD.contents | {"answers": RECORD.contents["answers"][1:]}) == {"answers_follow"}
    superseded = {"digest": parse(ENTRIES[3]).digest, "result": "pass"}
    old = [one | superseded if one["id"] != FAILED else one for one in RECORD.contents["answers"]]
    assert failing(RECORD.contents | {"answers": old}) == {"answers_follow"}


def test_a_better_answer_or_another_key_printed_beside_the_true_one_is_found():
    told = RECORD.contents
    better = [one | {"result": "pass"} for one in told["answers"]]
    assert failing(told | {"answers": better + told["answers"]}) == {"answers_follow"}
    keys = [one | {"count": 9} for one in told["hashes"]["keys"]] + told["hashes"]["keys"]
    assert failing(told | {"hashes": told["hashes"] | {"keys": keys}}) == {"heads_match"}


def test_of_a_person_enrolled_twice_the_later_role_stands_in_whatever_order_it_is_enclosed():
    """An inspector may settle another's answer; enrolled anew with less authority, no longer."""
    inspector = author("ina", "inspector")
    lesser = inspector._replace(role="installer", key=author("", "").key)
    settled = answer(FAILED, "pass")
    entries = [*ENTRIES, sign(inspector, RECORD.job, "answer", FAILED, 0, None, settled, (parse(ENTRIES[2]).digest,))]
    signed = RECORD.signed._replace(entries=entries, receipts=receipts(RECORD.server, RECORD.job, entries))
    for roles, ours in (((inspector, lesser), FAILS), ((lesser, inspector), HOLDS)):
        enrolments = [*ENROLMENTS, *(enrol(RECORD.server, seq, who) for seq, who in enumerate(roles, 3))]
        told = contents(RECORD.job, RECORD.server, (*RECORD.authors, inspector), signed)
        for order in (enrolments, enrolments[::-1]):
            enclosed = files(RECORD, entries=entries, receipts=signed.receipts, enrolments=order)
            facts = {fact.name: fact.status for fact in entry_facts(enclosed, told)}
            assert facts["answers_follow"] == ours, roles


def again(body):
    """The record with the first answer signed, receipted and printed otherwise, by people who hold every key."""
    first = sign(FOREMAN, RECORD.job, "answer", FAILED, 1, parse(ENTRIES[1]).digest, body)
    rest = [sign(FOREMAN, RECORD.job, "answer", parse(ENTRIES[3]).payload["subject"], 2, parse(first).digest,
                 answer(parse(ENTRIES[3]).payload["subject"], "pass"))]  # fmt: skip
    entries = [*ENTRIES[:2], first, *rest]
    signed = RECORD.signed._replace(entries=entries, receipts=receipts(RECORD.server, RECORD.job, entries))
    told = contents(RECORD.job, RECORD.server, RECORD.authors, signed)
    facts = entry_facts(files(RECORD, entries=entries, receipts=signed.receipts), told)
    return {fact.name: fact.status for fact in facts}


def test_a_verdict_that_its_own_rule_does_not_give_is_found_though_everybody_signed_it():
    assert set(again(counted(FAILED, 3, "fail")).values()) == {HOLDS}
    found = again(counted(FAILED, 3, "pass"))
    assert {name for name, status in found.items() if status != HOLDS} == {"verdicts_recompute"}
    assert found["verdicts_recompute"] == FAILS
    later = counted(FAILED, 3, "fail")
    later["verdict"]["rule"] = "limit@99"
    assert again(later)["verdicts_recompute"] == UNKNOWN


def test_a_phone_that_forked_or_lost_an_entry_shows_though_all_was_receipted():
    fork = sign(FOREMAN, RECORD.job, "answer", FAILED, 1, parse(ENTRIES[1]).digest, answer(FAILED, "pass"))
    for entries in ([*ENTRIES, fork], [*ENTRIES[:2], *ENTRIES[3:]]):
        signed = RECORD.signed._replace(entries=entries, receipts=receipts(RECORD.server, RECORD.job, entries))
        told = contents(RECORD.job, RECORD.server, RECORD.authors, signed)
        assert failing(told, entries=entries, receipts=signed.receipts) == {"chains_whole"}


def test_contents_of_any_other_shape_are_an_answer_and_never_an_exception():
    for told in ({}, {"hashes": None, "answers": 3, "job": []}, {"hashes": {}, "answers": [None]}):
        assert {"heads_match", "answers_follow"} <= failing(told)


@pytest.mark.parametrize("data", [b"", b"\n", b"\xff\xfe", b"a.b.c", b"[]", b"{}", b"null", b"\0" * 999])
def test_rubbish_instead_of_a_file_is_an_answer_and_never_an_exception(data):
    for name in files(RECORD):
        facts = entry_facts(files(RECORD) | {name: data}, RECORD.contents)
        assert name == "contents.json" or any(fact.status == FAILS for fact in facts), name


def test_what_came_once_its_key_was_ended_wants_somebody_who_let_it_in():
    def ended(seq, **changed):
        statement = format_statement(revocation(seq, AT, FOREMAN.kid, "server"), RECORD.server)
        return "entries_signed" in failing(enrolments=[*ENROLMENTS, statement], **changed)

    assert ended(3) and not ended(100)  # its receipts have the numbers from 10
    let_in, prev = [], parse(ENTRIES[0]).digest
    for seq, digest in enumerate([parse(one).digest for one in ENTRIES[1:]], 1):
        let_in.append(sign(CHIEF, RECORD.job, "admission", digest, seq, prev, {"entry": digest}))
        prev = parse(let_in[-1]).digest
    more = [*ENTRIES, *let_in]
    assert not ended(3, entries=more, receipts=receipts(RECORD.server, RECORD.job, more))
    assert ended(3, entries=more[:-1], receipts=receipts(RECORD.server, RECORD.job, more[:-1]))
