"""The bag around a package (BagIt 1.0, RFC 8493): which files it has, and whether each is what its list says.

Facts: ``bag_complete`` (RFC 8493, 3: what is listed is there and what is there is listed, by names of the layout alone;
the declaration is the one line by line, and the payload is as many bytes in as many files as ``bag-info.txt`` says) and
``bag_matches`` (every SHA-256 is the listed one). A list is read more strictly than the RFC asks: digits in lower case,
one form of line. Whoever changes a package can write its lists anew: a bag that matches is whole, not genuine.
"""

import re
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from inspect_app.evidence.fact import FAILS, HOLDS, Fact
from inspect_app.evidence.package.names import BAGIT, INFO, NEEDED, PAYLOAD, TAGS, Strange, belongs, of_the_system

COMPLETE, MATCHES = "bag_complete", "bag_matches"
DECLARATION = b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
LINE = re.compile(rb"([0-9a-f]{64})  ([\x21-\x7e]{1,200})")
OXUM = re.compile(rb"(?m)^Payload-Oxum: (\d{1,18})\.(\d{1,9})$")
CODES = ("strange", "unlisted", "missing", "declaration", "manifest", "oxum")  # the first says most
SHOWN = 20  # names told of one fact; the count is of all


class Fault(NamedTuple):
    """``file`` and ``code``, of ``CODES``."""

    file: str
    code: str


def bag_facts(
    sizes: Mapping[str, int], strange: Sequence[Strange], digests: Mapping[str, str], texts: Mapping[str, bytes]
) -> list[Fact]:
    """Both facts. ``sizes``: every plain file of the package; ``strange``: whatever else stands in it; ``digests``: the
    SHA-256 found, hexadecimal; ``texts``: the bytes of the four files of the bag itself, those that are there."""
    ours = {name: size for name, size in sizes.items() if not of_the_system(name)}
    faults = [Fault(one.name, "strange") for one in strange if not of_the_system(one.name)]
    faults += [Fault(name, "strange") for name in ours if not belongs(name)]
    faults += [Fault(name, "missing") for name in NEEDED if name not in ours]
    if texts.get(BAGIT) != DECLARATION:
        faults.append(Fault(BAGIT, "declaration"))
    listed: dict[str, str] = {}
    for manifest in (PAYLOAD, TAGS):
        lines, sound = _listed(texts.get(manifest, b""), manifest)
        listed |= lines
        faults += [] if sound else [Fault(manifest, "manifest")]
    faults += [Fault(name, "missing") for name in listed if name not in ours]
    faults += [Fault(name, "unlisted") for name in ours if name not in listed and name != TAGS]
    payload = {name: size for name, size in ours.items() if name.startswith("data/")}
    if _oxum(texts.get(INFO, b"")) != (sum(payload.values()), len(payload)):
        faults.append(Fault(INFO, "oxum"))
    other = [name for name in sorted(listed) if name in ours and digests.get(name) != listed[name]]
    ranked = sorted(set(faults), key=lambda one: (CODES.index(one.code), one.file))
    return [
        _told(COMPLETE, ranked, {"count": len(ours), "left_out": len(sizes) - len(ours)}),
        _told(MATCHES, [Fault(name, "other_bytes") for name in other], {"count": len(listed)}),
    ]


def _listed(data: bytes, manifest: str) -> tuple[dict[str, str], bool]:
    """``({name: digest}, whether every line is one)``; of a name listed twice the first stands."""
    lines = data.split(b"\n")
    found: dict[str, str] = {}
    sound = bool(data) and not lines.pop()
    for line in lines:
        told = LINE.fullmatch(line)
        name = told[2].decode("ascii") if told else ""
        own = name.startswith("data/") if manifest == PAYLOAD else not name.startswith("data/")
        if told is None or name in found or not own or name == TAGS:
            sound = False
        else:
            found[name] = told[1].decode("ascii")
    return found, sound


def _oxum(info: bytes) -> tuple[int, int] | None:
    found = OXUM.findall(info)
    return (int(found[0][0]), int(found[0][1])) if len(found) == 1 else None


def _told(name: str, faults: list[Fault], about: dict[str, int]) -> Fact:
    if not faults:
        return Fact(name, HOLDS, None, about)
    named = [one._asdict() for one in faults[:SHOWN]]
    first = {"file": faults[0].file, "code": faults[0].code}
    return Fact(name, FAILS, faults[0].code, about | {"faults": len(faults), "files": named} | first)
