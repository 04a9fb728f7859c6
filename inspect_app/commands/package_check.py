"""Verify a package where it lies: its bytes are hashed here while a bounded process looks at what is in them."""

from collections.abc import Callable, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import suppress
from typing import Any

from inspect_app.commands.again import ALONE, Beside, again, beside_in
from inspect_app.commands.bounded import MEMORY, Bounded, patience, too_much
from inspect_app.commands.opened import Opened, Place
from inspect_app.entry.jwk import Jwk
from inspect_app.entry.picture_type import FIRST
from inspect_app.evidence.package.known import Known, known_from
from inspect_app.evidence.package.log import Witness
from inspect_app.evidence.package.names import (
    KEYS,
    LARGEST_REPORT,
    LARGEST_TEXT,
    LARGEST_TOKENS,
    OF_THE_BAG,
    PACKAGE,
    PHOTO,
    REPORT,
    TOKENS,
    belongs,
)
from inspect_app.evidence.package.reports import ReportFound, report_found
from inspect_app.evidence.package.verify import Found, PackageVerification, verify_package

TEXTS = (*OF_THE_BAG, PACKAGE, KEYS, *TOKENS)
Ask = Callable[..., Any]  # ask(work, *given): what the work gives, None where it took too much


def check_package(opened: Opened, trust: Sequence[str], later: Callable[[Jwk], Sequence[Witness]] | None = None,
                  ask: Ask | None = None, redraw: bool = False) -> PackageVerification:  # fmt: skip
    """``later(server key)``: receipts kept elsewhere; ``ask``: who looks at records and reports, a process with bounds
    unless one is given; ``redraw``: draw the reports' pages and copies again. Never raises for anything in the package;
    what cannot be read is as good as changed."""
    largest = max((place.size for name, place in opened.places.items() if REPORT.fullmatch(name)), default=0)
    if ask is not None:
        return _checked(opened, trust, later, ask, redraw)
    with Bounded(MEMORY + 10 * min(largest, LARGEST_REPORT), patience(redraw)) as bounded:
        return _checked(opened, trust, later, bounded.ask, redraw)


def _checked(
    opened: Opened, trust: Sequence[str], later: Callable[[Jwk], Sequence[Witness]] | None, ask: Ask, redraw: bool
) -> PackageVerification:
    texts = {name: data for name in TEXTS if (data := _text(opened.places.get(name), name)) is not None}
    with ThreadPoolExecutor(1) as beside:
        looking = beside.submit(_looked_at, opened, texts, trust, ask, redraw)
        digests, faults = _hashed(opened)
        known, reports = looking.result()
    sizes = {name: place.size for name, place in opened.places.items()}
    archive = None if opened.archive is None else [*opened.archive, *faults]
    found = Found(sizes, digests, opened.strange, texts, archive, opened.no_archive, _firsts(opened))
    witnesses = later(known.server_key) if later is not None and known.server_key is not None else ()
    return verify_package(found, known, reports, trust, witnesses)


def _looked_at(
    opened: Opened, texts: dict[str, bytes], trust: Sequence[str], ask: Ask, redraw: bool
) -> tuple[Known, list[ReportFound]]:
    known = ask(known_from, {name: texts[name] for name in TOKENS if name in texts}) or known_from({})
    numbers = {name: int(match[1]) for name in opened.places if (match := REPORT.fullmatch(name))}
    reports, beside = [], beside_in(opened, redraw)
    for name in sorted(numbers, key=lambda one: numbers[one]):
        found = ask(read_report, name, opened.places[name], trust, known.server_key, beside)
        reports.append(found or ReportFound(name, too_much(trust, redraw)))
    return known, reports


def read_report(
    name: str, place: Place, trust: Sequence[str], server_key: Jwk | None, beside: Beside = ALONE
) -> ReportFound:
    """The report that lies there, verified. ``OSError`` where it cannot be read."""
    return report_found(name, place.read(LARGEST_REPORT), trust, server_key,
                        lambda data, looked: again(data, looked, beside))  # fmt: skip


def _text(place: Place | None, name: str) -> bytes | None:
    try:
        return None if place is None else place.read(LARGEST_TOKENS if name in TOKENS else LARGEST_TEXT)
    except OSError:
        return None


def _firsts(opened: Opened) -> dict[str, bytes]:
    """The first bytes of each photo that can be read."""
    found: dict[str, bytes] = {}
    for name, place in opened.places.items():
        if PHOTO.fullmatch(name):
            with suppress(OSError):
                found[name] = place.first(FIRST)
    return found


def _hashed(opened: Opened) -> tuple[dict[str, str], list[tuple[str, str]]]:
    """The SHA-256 of each file of the layout; what cannot be read has none, and so matches nothing."""
    digests: dict[str, str] = {}
    faults: list[tuple[str, str]] = []
    for name, place in opened.places.items():
        if not belongs(name):
            continue
        try:
            digests[name], right = place.sums()
        except OSError:
            digests[name], right = "", True
        if not right:
            faults.append((name, "crc"))
    return digests, faults
