"""Attacks on the signed record: entries, receipts, enrolments, by people without a key, with a person's and with the
server's."""

import base64
import json
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec

from inspect_app.entry.format import parse
from inspect_app.entry.jwk import public_jwk
from inspect_app.entry.jws import format_jws
from inspect_app.entry.statement import enrolment, format_statement, revocation
from tests.evidence.attacks.attack import ALL, NOBODY, PERSON, SERVER, Attack, edit, put
from tests.evidence.packed import (
    NAMED,
    PHOTOS,
    Files,
    bagged,
    fitted,
    job,
    lines,
    payload,
    read,
    record,
    report,
    reports,
    spelled,
)
from tests.evidence.record import AT, Author, answer, author, counted, enrol, receipts, sign
from tests.phone import new_uuid

LAST = -1  # the entry that is dropped
ONLY_LATER = "none: `log_not_cut` stays not determinable, and says what would show it"
STRANGER = ec.derive_private_key(0x5EA3, ec.SECP256R1())


def letter(token: str) -> str:
    """A token whose body says another thing under the old signature."""
    head, body, signature = token.split(".")
    said = base64.urlsafe_b64decode(body + "=" * (-len(body) % 4)).replace(b'"fail"', b'"pass"')
    return f"{head}.{base64.urlsafe_b64encode(said).rstrip(b'=').decode()}.{signature}"


def otherwise(token: str, key: Any = None, **changed: Any) -> str:
    """An entry that says another thing, signed by a key."""
    payload = parse(token).payload
    body = payload["body"] | {"choice": "pass", "verdict": answer("a/b/c", "pass")["verdict"]}
    return format_jws(payload | {"body": body} | changed, "seamwalk-entry", key or foreman().key)


def false_verdict(files: Files) -> Files:
    """Three where two at most are good, and signed as good by everybody."""
    *rest, last = lines(files, "entries")
    payload = parse(last).payload
    body = payload["body"] | counted(payload["subject"], 3, "pass")
    kept = {name: payload["body"][name] for name in ("area", "definition", "photos")}
    return by_the_server(files, [*rest, format_jws(payload | {"body": body | kept}, "seamwalk-entry", foreman().key)])


def own_draw(files: Files) -> Files:
    """A lot drawn by a ticket that the foreman made up: the panels that they had looked at."""
    site = job().site.up_to(None)
    site.plan(21, 40, 1, lambda made, body: body.update(ticket=made.ticket(1, server=STRANGER)))
    return by_the_server(files, site.entries)


def foreman() -> Author:
    return job().site.foreman


def by_the_server(files: Files, entries: list[str]) -> Files:
    """The server's owner gives all receipts anew, for other entries."""
    chain = receipts(job().site.server, job().site.job, entries, PHOTOS)
    return put(put(files, "entries", entries), "receipts", chain)


def enrolled(kid: str, name: str, key: Any) -> str:
    """The enrolment of a key under another name, signed by somebody."""
    site = job().site
    said = {"id": "fay", "name": name, "role": "inspector"}
    return format_statement(enrolment(2, AT, public_jwk(site.foreman.key), said, "test"), key)


def invented(files: Files) -> Files:
    """Every entry stays, but another server receives it and says whose the keys are."""
    made = job().site.up_to(None)
    made.server = STRANGER
    return bagged(payload(made.made(PHOTOS), {}))


def swapped(at: int) -> Any:
    return lambda tokens: [*tokens[:at], tokens[at + 1], tokens[at], *tokens[at + 2 :]]


def first_day(files: Files, *numbers: int) -> Files:
    """The log as it stood at the end of the first day, with these reports."""
    early = job().site.up_to(job().days[0]).made(())
    return bagged(payload(early, {number: reports()[number - 1] for number in numbers}, ()))


def shortened(files: Files) -> Files:
    """The log without its last two receipts and what they are for, and without the report that tells of them."""
    site = job().site.up_to(LAST)
    chain = receipts(site.server, site.job, site.entries, ())
    left = {name: data for name, data in files.items() if "/photos/" not in name and "/2-" not in name}
    return put(put(left, "entries", site.entries), "receipts", chain)


def ended(files: Files) -> Files:
    """The foreman's key was ended before anything came from it, and nobody let it in."""
    said = format_statement(revocation(3, AT, foreman().kid, "cleo"), job().site.server)
    return put(files, "enrolments", [*lines(files, "enrolments"), said])


def unended(files: Files) -> Files:
    """The last report tells that a key was ended; the package was rid of that statement."""
    whole = record()
    said = format_statement(revocation(9000, AT, foreman().kid, "cleo"), job().site.server)
    told = whole._replace(signed=whole.signed._replace(enrolments=[*whole.signed.enrolments, said]))
    return bagged(fitted(files | {"data/reports/2-closeout.pdf": report(told, 2, 1)}))


def ended_again(files: Files) -> Files:
    """A key was ended before its entries came, and the server says once more, and later, that it is."""
    said = format_statement(revocation(9000, AT, foreman().kid, "cleo"), job().site.server)
    return put(files, "enrolments", [*lines(ended(files), "enrolments"), said])


def of_another_job(files: Files) -> Files:
    """All that somebody did in another job is given receipts of this one."""
    other, server = author("ivan", "inspector"), job().site.server
    grafted = sign(other, new_uuid(), "walk", new_uuid(), 0, None, {"definition": NAMED})
    made = put(files, "enrolments", [*lines(files, "enrolments"), enrol(server, 3, other)])
    made = by_the_server(made, [*lines(files, "entries"), grafted])
    return bagged(made | {"data/package.json": spelled(json.loads(made["data/package.json"]) | {"job": None})})


ATTACKS = [
    Attack("an entry is taken out", NOBODY, edit("entries", lambda all: all[:-2] + all[-1:])),
    Attack("an entry is repeated", NOBODY, edit("entries", lambda all: [*all, all[-1]])),
    Attack("two entries are swapped", NOBODY, edit("entries", swapped(4))),
    Attack("the entries are put in another order", NOBODY, edit("entries", lambda all: all[::-1])),
    Attack("the last entry is cut short", NOBODY, edit("entries", lambda all: [*all[:-1], all[-1][:-40]])),
    Attack("a word of an entry is changed under its signature", NOBODY,
           edit("entries", lambda all: [*all[:-1], letter(all[-1])])),
    Attack("an entry is signed anew by a key that nobody enrolled", NOBODY,
           edit("entries", lambda all: [*all[:-1], otherwise(all[-1], STRANGER)])),
    Attack("a person signs an entry of another anew", PERSON,
           edit("entries", lambda all: [*all[:-1], otherwise(all[-1], job().site.chief.key)])),
    Attack("a person signs their own entry anew after it was received", PERSON,
           edit("entries", lambda all: [*all[:-1], otherwise(all[-1])])),
    Attack("a receipt is taken out", NOBODY, edit("receipts", lambda all: all[:4] + all[5:])),
    Attack("a receipt is repeated", NOBODY, edit("receipts", lambda all: [*all, all[3]])),
    Attack("a receipt and its entry are taken out", NOBODY, lambda files: put(
        put(files, "entries", lines(files, "entries")[:-1]), "receipts",
        [one for one, told in zip(lines(files, "receipts"), read(files, "receipts"), strict=True)
         if told.get("entry") != parse(lines(files, "entries")[-1]).digest])),
    Attack("an enrolment is taken out", NOBODY, edit("enrolments", lambda all: all[:1])),
    Attack("a key is given to another person", NOBODY, edit(
        "enrolments", lambda all: [all[0], enrolled(foreman().kid, "Somebody else", STRANGER)])),
    Attack("an entry comes after its key was ended, and nobody let it in", SERVER, ended),
    Attack("an entry comes after its key was ended, and the server ends it again later", SERVER, ended_again),
    Attack("the end of a key is left out, and a report tells of it", NOBODY, unended),
    Attack("what somebody did in another job is received into this one", SERVER, of_another_job),
    Attack("the server drops an entry and gives all receipts anew", SERVER,
           lambda files: by_the_server(files, [*lines(files, "entries")[:-2], lines(files, "entries")[-1]])),
    Attack("the server drops the last entry and gives all receipts anew", SERVER,
           lambda files: by_the_server(files, lines(files, "entries")[:-1])),
    Attack("the server and a person change an entry, and all receipts are given anew", ALL,
           lambda files: by_the_server(files, [*lines(files, "entries")[:-1], otherwise(lines(files, "entries")[-1])])),
    Attack("a verdict is recorded that its own rule does not give, and everybody signs", ALL, false_verdict),
    Attack("a lot is drawn by a ticket that somebody made up, and the server takes it", ALL, own_draw),
    Attack("the whole record is received anew by a server that somebody made up", PERSON, invented),
    Attack("the log is set back to the first day, and the reports stay", NOBODY,
           lambda files: first_day(files, 1, 2)),
    Attack("the last day is dropped, its report too; the reader has that report", NOBODY,
           lambda files: first_day(files, 1), lambda: reports()[1]),
    Attack("the last day is dropped, its report too; the reader has a receipt of it", NOBODY,
           lambda files: first_day(files, 1), lambda: receipts_of_all()),
    Attack("the last day is dropped with all reports, and the reader has nothing later", NOBODY,
           lambda files: first_day(files), unseen=ONLY_LATER),
    Attack("the last entry is dropped with all that tells of it, and the reader has nothing later", NOBODY,
           shortened, unseen=ONLY_LATER),
    Attack("the last day is dropped with its report, and the reader has nothing later", NOBODY,
           lambda files: first_day(files, 1), unseen=ONLY_LATER),
]  # fmt: skip


def receipts_of_all() -> bytes:
    return "".join(f"{one}\n" for one in job().site.made(PHOTOS).signed.receipts).encode()
