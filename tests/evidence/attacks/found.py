"""Verify what each attack leaves, and print the facts that turned."""

import hashlib
import tempfile
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

from inspect_app.commands.opened import Opened, open_archive, open_folder
from inspect_app.commands.package_check import check_package, read_report
from inspect_app.commands.verify_later import Later
from inspect_app.evidence.fact import FAILS, UNKNOWN
from inspect_app.evidence.package.verify import PackageVerification
from tests.evidence.attacks import on_photos, on_reports, on_the_archive, on_the_bag, on_tokens
from tests.evidence.attacks.attack import Attack
from tests.evidence.packed import sound, written
from tests.evidence.sealed import key

GROUPS = {
    "The bag and what nobody signed": on_the_bag.ATTACKS, "Photos and checklists": on_photos.ATTACKS,
    "Entries, receipts, keys, draws": on_tokens.ATTACKS, "Reports": on_reports.ATTACKS,
}  # fmt: skip


class Turned(NamedTuple):
    """``{fact: reason}`` of what is false, and of what can no longer be told; a report's own facts as
    ``reports_hold: FACT``."""

    false: dict[str, str]
    untold: dict[str, str]


@cache
def trust() -> tuple[str, str]:
    """The fingerprints of the sealer and of the server, as a careful reader has them."""
    with tempfile.TemporaryDirectory() as folder:
        return key("Issuer (invented)").fingerprint, str(check(opened(sound(), Path(folder)), ()).server)


@cache
def untouched() -> Turned:
    """What is not determinable of the sound package either."""
    return turned(Attack("", "", lambda files: files))


@cache
def turned(attack: Attack) -> Turned:
    """What turned by an attack on the sound package."""
    with tempfile.TemporaryDirectory() as folder:
        files = attack.files(dict(sound()))
        later = None
        if attack.later:
            (Path(folder) / "later").write_bytes(attack.later())
            later = Later([Path(folder) / "later"]).witnesses
        return of(check(opened(files, Path(folder) / "package"), trust(), later))


@cache
def turned_archive(change: Callable[[bytes], bytes]) -> Turned:
    """As ``turned``, of the package's zip."""
    with tempfile.TemporaryDirectory() as folder:
        (Path(folder) / "package.zip").write_bytes(change(on_the_archive.archive()))
        return of(check(open_archive(Path(folder) / "package.zip"), trust()))


def of(found: PackageVerification) -> Turned:
    facts = [(fact.name, fact) for fact in found.facts]
    facts += [(f"reports_hold: {fact.name}", fact) for one in found.reports for fact in one.verification.facts]
    return Turned({name: str(fact.reason) for name, fact in facts if fact.status == FAILS},
                  {name: str(fact.reason) for name, fact in facts if fact.status == UNKNOWN})  # fmt: skip


def opened(files: Mapping[str, bytes], folder: Path) -> Opened:
    written(files, folder)
    return open_folder(folder)


_reports: dict[Any, Any] = {}


def check(found: Opened, trusted: tuple[str, ...], later: Any = None) -> PackageVerification:
    """In this process; a report whose bytes were verified before is not verified again."""

    def ask(work: Any, *given: Any) -> Any:
        if work is not read_report:
            return work(*given)
        name, place, *rest = given
        data = place.read(1 << 30)
        told = (name, hashlib.sha256(data).hexdigest(), str(rest))
        if told not in _reports:
            _reports[told] = work(*given)
        return _reports[told]

    return check_package(found, trusted, later, ask)


def table() -> str:
    """A Markdown table of the attacks for the documentation."""
    lines = ["| Attack | Key | Facts that turn false |", "|---|---|---|"]
    for title, attacks in GROUPS.items():
        lines.append(f"| **{title}** | | |")
        lines += [f"| {one.what} | {one.key} | {one.unseen or _said(turned(one))} |" for one in attacks]
    lines.append("| **The zip** | | |")
    lines += [f"| {one.what} | none | {_said(turned_archive(one.change))} |" for one in on_the_archive.ATTACKS]
    return "\n".join(lines)


def _said(turn: Turned) -> str:
    plain = [f"`{name}`" for name in turn.false if ": " not in name]
    own = list(dict.fromkeys(f"`{name.split(': ')[1]}`" for name in turn.false if ": " in name))
    return ", ".join(plain) + (f" (of the report: {', '.join(own)})" if own else "")
