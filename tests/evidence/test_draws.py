"""The draws of a report: whoever changes a ticket, a population, a number or what is printed of it is found."""

import copy
import random

import pytest
from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.evidence.draws import draw_fact
from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.record.population import digest_of
from tests.evidence.drawn import PANELS, Site, begun, site
from tests.evidence.record import files
from tests.evidence.record import made as without_lots
from tests.phone import new_uuid

SEED = 20261128
HONEST = site()
MADE = HONEST.made()


def facts(made, told=None):
    return {fact.name: fact for fact in entry_facts(files(made), made.contents if told is None else told)}


def failing(made, told=None):
    return {name for name, fact in facts(made, told).items() if fact.status == FAILS}


def reason(where):
    """Why the draw of the entries fails, whatever is printed."""
    fact = draw_fact([parse(one) for one in where.entries], public_jwk(where.server), None, {})
    assert fact.status == FAILS and fact.about["lot"] == where.first
    return fact.reason


def test_honest_lots_recompute_and_the_ticket_left_out_is_counted():
    found = facts(MADE)
    assert {fact.status for fact in found.values()} == {HOLDS}
    assert found["draw_recomputes"].about == {"lots": 2, "repeated": 0, "skipped": 1}
    drawn = MADE.contents["lots"][0]["drawn"]
    assert len(drawn) == 5 and {"area", "panel"} == set().union(*drawn), "the sample is not empty, some of it shown"


def test_a_report_without_lots_has_nothing_to_recompute():
    made = without_lots()
    fact = facts(made)["draw_recomputes"]
    assert "lots" not in made.contents and (fact.status, fact.about["lots"]) == (HOLDS, 0)
    assert failing(made, made.contents | {"lots": [{"lot": "x", "drawn": []}]}) == {"draw_recomputes"}


def test_without_the_contents_nothing_is_claimed_of_what_is_printed():
    fact = next(one for one in entry_facts(files(MADE), None) if one.name == "draw_recomputes")
    assert fact.status == UNKNOWN


def ticket_of(**other):
    def change(where: Site, body) -> None:
        given = {"kid": where.chief.kid} if other == {"kid": "another"} else other
        body["ticket"] = where.ticket(0, **given)

    return change


def stranger(where: Site, body) -> None:
    body["ticket"] = where.ticket(0, server=ec.generate_private_key(ec.SECP256R1()))


def receipt_for_ticket(where: Site, body) -> None:
    body["ticket"]["statement"] = MADE.signed.receipts[0]


def chosen_random(where: Site, body) -> None:
    body["ticket"]["random"] = where.ticket(7)["random"]


def no_statement(where: Site, body) -> None:
    body["ticket"]["statement"] = ""


@pytest.mark.parametrize(
    ("change", "code"),
    [
        (ticket_of(kid="another"), "ticket_not_theirs"), (ticket_of(job=new_uuid()), "ticket_not_theirs"),
        (ticket_of(statement_n=4), "ticket_not_theirs"), (chosen_random, "ticket_not_theirs"),
        (stranger, "ticket_not_signed"), (receipt_for_ticket, "ticket_not_signed"), (no_statement, "ticket_not_signed"),
    ],
    ids=["another key's", "another job's", "replayed under another number", "other random bytes", "another server's",
         "a receipt", "none"],
)  # fmt: skip
def test_a_ticket_that_was_not_given_for_this_very_draw_is_found(change, code):
    assert reason(begun(change)) == code


def test_a_lot_signed_by_somebody_else_than_its_ticket_s_owner_is_found():
    assert reason(begun(by_chief=True)) == "ticket_not_theirs"
    own_under_the_other_s_name = begun(ticket_of(kid="another"), by_chief=True)
    assert reason(own_under_the_other_s_name) == "ticket_not_theirs"


def test_a_turned_bit_anywhere_in_a_ticket_is_found():
    chance = random.Random(SEED)
    length = len(HONEST.ticket(0)["statement"])
    for at in [0, length - 1, *chance.sample(range(length), 6)]:
        bit = 1 << chance.randrange(7)

        def turned(where: Site, body, at=at, bit=bit) -> None:
            told = body["ticket"]["statement"]
            body["ticket"]["statement"] = told[:at] + chr(ord(told[at]) ^ bit).replace("\0", "\1") + told[at + 1 :]

        where = begun(turned)
        assert reason(where) == "ticket_not_signed", (at, bit)


def set_to(name, value):
    def change(where: Site, body) -> None:
        body[name] = value(body) if callable(value) else value

    return change


def last_panel_too(where: Site, body) -> None:
    body["population"][0]["to"] = PANELS
    body["size"] = PANELS
    body["population_digest"] = digest_of([(where.area, 1, PANELS)])
    body["plans"] = {"critical": {"n": 5, "accept": 0}}


def other_version(where: Site, body) -> None:
    body["population"][0]["area_entry"] = body["population"][0]["assembly_entry"]


def missing_version(where: Site, body) -> None:
    body["population"][0]["area_entry"] = parse(MADE.signed.entries[0]).digest


def twice(where: Site, body) -> None:
    body["population"] = body["population"] * 2


def softer_plan(where: Site, body) -> None:
    body["plans"]["major"]["n"] = body["plans"]["minor"]["n"] = body["plans"]["critical"]["n"] = body["n"] = 2


@pytest.mark.parametrize(
    "change",
    [
        set_to("size", 19), set_to("size", lambda body: body["size"] + 1), set_to("n", 4), set_to("n", 6),
        set_to("population_digest", lambda body: digest_of([(body["population"][0]["area"], 1, 19)])),
        set_to("placements", [parse(MADE.signed.entries[0]).digest]), set_to("population", []),
        last_panel_too, other_version, missing_version, twice, softer_plan,
    ],
    ids=["N less", "N more", "n less", "n more", "digest of fewer panels", "placements not here", "no population",
         "the last panel too", "an area that is none", "an area not here", "panels twice", "a softer plan"],
)  # fmt: skip
def test_a_lot_that_says_other_than_its_roof_and_its_plan_give_is_found(change):
    assert reason(begun(change)) == "other_draw"


def test_a_tampered_lot_breaks_no_other_fact():
    assert failing(site(softer_plan).made()) == {"draw_recomputes"}


def test_drawing_again_by_a_used_ticket_is_counted_and_moves_nothing():
    where = site()
    before = where.record()["lots"][where.first]["drawn"]
    where.plan(1, 30, 0)
    made = where.made()
    assert failing(made) == set() and facts(made)["draw_recomputes"].about["repeated"] == 1
    assert where.record()["lots"][where.first]["drawn"] == before


def printed(change):
    told = copy.deepcopy(MADE.contents)
    change(told["lots"])
    return failing(MADE, told)


def test_drawn_panels_printed_otherwise_are_found():
    shown = next(at for at, stop in enumerate(MADE.contents["lots"][0]["drawn"]) if "panel" in stop)
    assert printed(lambda lots: None) == set()
    for change in (
        lambda lots: lots[0]["drawn"][shown].update(panel=lots[0]["drawn"][shown]["panel"] % 20 + 1),
        lambda lots: lots[0]["drawn"][shown].clear(),
        lambda lots: lots[0]["drawn"].pop(),
        lambda lots: lots[0]["drawn"].reverse(),
        lambda lots: lots[1]["drawn"][0].update(area=HONEST.area, panel=22),
        lambda lots: lots.pop(),
        lambda lots: lots.append(lots[0]),
        lambda lots: lots.clear(),
        lambda lots: lots.insert(0, None),
    ):
        assert printed(change) - {"lots_follow"} == {"draw_recomputes"}
