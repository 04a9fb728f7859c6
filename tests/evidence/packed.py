"""A small evidence package as its files: a job with drawn lots, a walk, photos, a checklist and two reports; and every
private key, as an attacker could wish for."""

import hashlib
import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.commands.opened import Opened, open_folder
from inspect_app.commands.package_check import check_package
from inspect_app.entry.base64url import encode
from inspect_app.entry.format import parse
from inspect_app.entry.jws import parse_jws
from inspect_app.entry.picture_type import ending_of
from inspect_app.entry.pictures import pictures
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import parse_statement
from inspect_app.evidence.enclosure import enclosures
from inspect_app.evidence.fact import HOLDS
from inspect_app.evidence.package.verify import PackageVerification
from inspect_app.record.fold import fold
from inspect_app.report.basis import issuer
from inspect_app.report.contents import report_contents
from inspect_app.report.release import release
from inspect_app.report.seal_key import SealKey
from tests.evidence.drawn import Site
from tests.evidence.record import AT, Made, answer, contents_of, counted
from tests.evidence.sealed import key, sealed_with
from tests.phone import new_uuid

DEFINITION = b'''{"id":"nail_flange","items":[{"id":"item_0"},{"id":"item_1","rule":{"inputs":{"at_most":2,''' \
    b'''"reading":"reading.count"},"name":"limit@1"}}],"per":"walk","title":{"en":"Invented","es":"Inventada"},"version":1}'''
NAMED = encode(hashlib.sha256(DEFINITION).digest())
PHOTOS = (b"\xff\xd8 one photo (invented)", b"\xff\xd8 another photo (invented)")
HELD = {hashlib.sha256(one).hexdigest(): {"held": True, "copy": None, "undecodable": "not_an_image"}
        for one in PHOTOS}  # fmt: skip
PAGE = b"<!doctype html><title>Invented</title>"
DECLARATION = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
STATIC = Path(__file__).parents[2] / "static"
RELEASE = release(STATIC / "words", STATIC / "vendor")
Files = dict[str, bytes]


class Walked(NamedTuple):
    """``site`` with its lots and one walk; ``days``: how many entries there were at the end of each day."""

    site: Site
    days: list[int]


def walked(photos: tuple[bytes, ...] = PHOTOS) -> Walked:
    site = Site({"definitions": {"nail_flange": NAMED}})
    site.plan(1, 20, 0)
    site.say(site.foreman, "mark", new_uuid(), {"lot": site.first, "area": site.area, "to": 12, "against": []})
    days = [len(site.entries)]
    walk = new_uuid()
    site.say(site.foreman, "walk", walk, {"definition": NAMED, "areas": [site.area], "placed": []})
    for n, data in enumerate(photos):
        photo = hashlib.sha256(data).hexdigest()
        site.say(site.foreman, "photo", photo, {"walk": walk, "station": None, "sha256": photo, "size": len(data)})
        subject = f"{walk}/nail_flange/item_{n}"
        body = counted(subject, 3, "fail") if n else answer(subject, "pass")
        site.say(site.foreman, "answer", subject, body | {"area": site.area, "definition": NAMED, "photos": [photo]}
                 | {"reading": {"count": 3} if n else None})  # fmt: skip
    days.append(len(site.entries))
    return Walked(site, days)


@cache
def job() -> Walked:
    return walked()


def record(entries: int | None = None, photos: tuple[bytes, ...] = PHOTOS) -> Made:
    """The job's record as it stood after so many entries."""
    site, _ = job()
    return site.up_to(entries).made(photos)


def report(of: Made, number: int, supersedes: int | None = None, by: SealKey | None = None, **changed: Any) -> bytes:
    """A sealed report of it, ``changed`` in what it says."""
    by = by or key("Issuer (invented)")
    told = contents_of(of._replace(contents=said(of, number, supersedes, by) | changed))
    return sealed_with(by, enclosures(told, of.signed, {NAMED: DEFINITION}), hashlib.sha256(told).hexdigest())


def said(of: Made, number: int, supersedes: int | None, by: SealKey, held: Any = HELD) -> dict[str, Any]:
    """All that an honest report of it says; ``held``: of its photos."""
    plain = [{"digest": one.digest, "kid": one.kid, "payload": one.payload} for one in map(parse, of.signed.entries)]
    people = {one.person: {"name": f"{one.person} (invented)", "role": one.role, "kids": [one.kid]}
              for one in of.authors}  # fmt: skip
    whole, last = fold(plain, people), parse_statement(of.signed.receipts[-1])
    log = {
        "head_seq": last.payload["seq"], "head_receipt": last.digest, "server_kid": last.kid, "apart": 0,
        "fingerprint": by.fingerprint,
        "keys": {kid: {"count": chain["count"], "head": chain["head"], "person": None}
                 for kid, chain in whole["chains"].items()},
    }  # fmt: skip
    told = {"number": number, "issued": AT, "supersedes": supersedes, "final": True, "issuer": issuer(whole, by.name),
            "made_with": RELEASE}  # fmt: skip
    return report_contents(whole, people, {NAMED: json.loads(DEFINITION)}, log, held, told)


@cache
def reports() -> tuple[bytes, bytes]:
    """Of the end of the first day, and of the second."""
    first, second = record(job().days[0], ()), record()
    return report(first, 1), report(second, 2, 1)


def payload(of: Made, sealed: Mapping[int, bytes], photos: tuple[bytes, ...] = PHOTOS) -> Files:
    """The files below ``data/``, as a package of this record holds them."""
    files = {f"data/{one.name}": one.data for one in enclosures(b"", of.signed) if one.name != "contents.json"}
    files |= {f"data/photos/{hashlib.sha256(one).hexdigest()}.{ending_of(one)}": one for one in photos}
    files[f"data/definitions/{NAMED}.json"] = DEFINITION
    files |= {f"data/reports/{number}-closeout.pdf": data for number, data in sealed.items()}
    return fitted(files)


def fitted(files: Mapping[str, bytes]) -> Files:
    """The files with a ``package.json`` and a ``keys.json`` that say what is there."""
    entries, receipts, statements = (read(files, name) for name in ("entries", "receipts", "enrolments"))
    rows = [{name: one[name] for name in ("kid", "person", "device")} | {"from": one["at"], "until": None}
            for one in statements if one["kind"] == "enrolment"]  # fmt: skip
    for one in statements:
        if one["kind"] == "revocation":
            rows = [row | {"until": one["at"]} if row["kid"] == one["kid"] else row for row in rows]
    last = parse_statement(lines(files, "receipts")[-1])
    held = [name for name in files if name.startswith("data/photos/")]
    wanted = {name for entry in entries for name in pictures(entry)}
    wanted |= {one["photo"] for one in receipts if "photo" in one}
    missing = sorted(wanted - {name[12:76] for name in held})
    told = {
        "v": 1, "kind": "package", "job": entries[0]["job"], "name": "Boathouse (invented)", "invented": True,
        "made": "2026-11-26T08:00:00.000Z", "head": {"seq": last.payload["seq"], "receipt": last.digest},
        "build": "0.1.0", "server_kid": last.kid, "seal_fingerprint": key("Issuer (invented)").fingerprint,
        "missing_photos": missing, "damaged_photos": [], "missing_definitions": [], "missing_reports": [],
        "counts": {"entries": len(entries), "receipts": len(receipts), "keys": len(rows), "photos": len(held),
                   "photo_bytes": sum(len(files[name]) for name in held),
                   "definitions": sum(name.startswith("data/definitions/") for name in files),
                   "reports": sum(name.startswith("data/reports/") for name in files), "kept_apart": 0,
                   "missing_photos": len(missing), "damaged_photos": 0, "missing_definitions": 0,
                   "missing_reports": 0},
    }  # fmt: skip
    return dict(files) | {"data/package.json": spelled(told), "data/keys.json": spelled(rows)}


def lines(files: Mapping[str, bytes], name: str) -> list[str]:
    """The tokens of ``data/NAME.txt``."""
    return files[f"data/{name}.txt"].decode("ascii").splitlines()


def read(files: Mapping[str, bytes], name: str) -> list[dict[str, Any]]:
    """Their payloads, whoever signed them; of those that read at all."""
    found = []
    for line in lines(files, name):
        try:
            found.append(parse_jws(line, f"seamwalk-{'entry' if name == 'entries' else 'statement'}").payload)
        except Refused:
            continue
    return found


def spelled(told: object) -> bytes:
    return (json.dumps(told, ensure_ascii=False, sort_keys=True, indent=1) + "\n").encode()


def bagged(files: Files, info: bytes | None = None) -> Files:
    """The files with a bag around them that fits: what whoever changes a package does last. ``info``: another
    ``bag-info.txt``."""
    inside = {name: data for name, data in files.items() if name.startswith("data/")}
    size = sum(len(data) for data in inside.values())
    tags = {
        "bagit.txt": DECLARATION,
        "bag-info.txt": info or b"Bagging-Date: 2026-11-26\nPayload-Oxum: %d.%d\n" % (size, len(inside)),
        "manifest-sha256.txt": _manifest(inside), "verify.html": files.get("verify.html", PAGE),
    }  # fmt: skip
    return inside | tags | {"tagmanifest-sha256.txt": _manifest(tags)}


@cache
def sound() -> Mapping[str, bytes]:
    """The package that nobody touched: never change it."""
    first, second = reports()
    return bagged(payload(record(), {1: first, 2: second}))


def told(files: Mapping[str, bytes], folder: Path, *trust: str, **more: Any) -> PackageVerification:
    """What verification finds of these files, written into the folder."""
    written(files, folder)
    return check(open_folder(folder), *trust, **more)


def written(files: Mapping[str, bytes], folder: Path) -> None:
    for name, data in files.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_bytes(data)


def check(opened: Opened, *trust: str, **more: Any) -> PackageVerification:
    """In this process: the bounds of another are tested by themselves."""
    return check_package(opened, trust, ask=lambda work, *given: work(*given), **more)


def other(found: PackageVerification) -> dict[str, tuple[str, str | None]]:
    """``{fact: (status, reason)}`` of all that do not hold."""
    return {fact.name: (fact.status, fact.reason) for fact in found.facts if fact.status != HOLDS}


def _manifest(files: Mapping[str, bytes]) -> bytes:
    return "".join(f"{hashlib.sha256(files[name]).hexdigest()}  {name}\n" for name in sorted(files)).encode()
