"""Whether sealing changed anything that is seen: between drawing the pages and signing them nobody else looked.

A seal is an update behind the drawn file (ISO 32000-1, 7.5.6), and an update can put any object in the place of an
older one. Ours adds the fields of the signatures, on one page, and the enclosed files; this holds it to that. What is
drawn in the seal's own box is left: it says what the signature says, and is beside the pages' own words.
"""

import io
from collections.abc import Mapping, Sequence
from typing import Any

from pyhanko.pdf_utils.generic import Reference
from pyhanko.pdf_utils.reader import PdfFileReader

from inspect_app.evidence.information import same_information

SEAL = "Seal"
OF_THE_CATALOG = {"/Version", "/AcroForm", "/Names", "/Extensions", "/Perms"}
OF_THE_INFORMATION = {"/ModDate", "/Producer"}
OF_A_FIELD = {"/Type", "/Subtype", "/FT", "/T", "/F", "/Rect", "/P", "/AP", "/V"}
APART = 0.01  # points


def painted_in_sealing(drawn: bytes, sealed: bytes, place: Mapping[str, Any]) -> str | None:
    """The first thing that the update changed and no seal of ours changes, in a word for people who know PDF; None
    where there is nothing. ``sealed``: the file up to the end of its seal, ``drawn`` and an update; ``place``: as
    ``write_pages`` gives it. A damaged file raises whatever the reader does."""
    old, new = PdfFileReader(io.BytesIO(drawn)), PdfFileReader(io.BytesIO(sealed))
    if new.xrefs.total_revisions != 2 or new.xrefs.hybrid_xrefs_present:
        return "revisions"
    if old.xrefs.get_xref_container_info(0).start_location != new.xrefs.get_xref_container_info(0).start_location:
        return "the older table"
    if new.xrefs.refs_freed_in_revision(1):
        return "objects taken out"
    page = old.find_page_for_modification(place["page"] - 1)[0].reference
    allowed = {
        _name(old.root_ref): OF_THE_CATALOG, _name(page): {"/Annots"}, _name(old.root.raw_get("/Metadata")): None,
        _name(old.trailer.raw_get("/Info")): OF_THE_INFORMATION,
    }  # fmt: skip
    if _name(new.root_ref) != _name(old.root_ref) or new.trailer.raw_get("/Info") != old.trailer.raw_get("/Info"):
        return "trailer"
    before = {_name(one) for one in old.xrefs.explicit_refs_in_revision(0)}
    for name in sorted(before & {_name(one) for one in new.xrefs.explicit_refs_in_revision(1)}):
        if name not in allowed or not _same(_get(old, name), _get(new, name), allowed[name]):
            return f"object {name[0]}"
    if not same_information(new, 0):
        return "title"  # a viewer may show it above the pages
    return _names(old, new) or _fields(_get(old, _name(page)), _get(new, _name(page)), new, place["boxes"])


def _name(reference: Any) -> tuple[int, int]:
    return reference.idnum, reference.generation


def _get(reader: PdfFileReader, name: tuple[int, int]) -> Any:
    return reader.get_object(Reference(*name, reader))


def _same(old: Any, new: Any, but: set[str] | None) -> bool:
    """Whether two dictionaries are the same ``but`` for these names; None for all of them."""
    names = {*old, *new} - but if but is not None else set()
    return all(name in old and name in new and old.raw_get(name) == new.raw_get(name) for name in names)


def _names(old: PdfFileReader, new: PdfFileReader) -> str | None:
    before, after = (_value(one.root, "/Names", {}) for one in (old, new))
    return None if _same(before, after, {"/EmbeddedFiles"}) else "names"


def _fields(old: Any, new: Any, reader: PdfFileReader, boxes: Mapping[str, Sequence[float]]) -> str | None:
    """The signatures' fields, each in its own box and, but for the seal, with nothing drawn in it."""
    form = reader.root["/AcroForm"]
    before, after, fields = (_listed(*one) for one in ((old, "/Annots"), (new, "/Annots"), (form, "/Fields")))
    if {*form} - {"/Fields", "/SigFlags"} or len(fields) != len(boxes) or after != before + fields:
        return "form"
    left = dict(boxes)
    for name in fields:
        field = _get(reader, name)
        box = left.pop(str(field["/T"]), None)
        if box is None or {*field} - OF_A_FIELD or field["/Subtype"] != "/Widget" or field["/FT"] != "/Sig":
            return "field"
        if any(abs(float(one) - other) > APART for one, other in zip(field["/Rect"], box, strict=True)):
            return "place of a field"
        looks = field["/AP"]
        if {*looks} - {"/N"} or (field["/T"] != SEAL and looks["/N"].data.strip()):
            return "look of a field"
    return None


def _listed(holder: Any, name: str) -> list[tuple[int, int]]:
    array = _value(holder, name, [])
    return [_name(array.raw_get(at)) for at in range(len(array))]


def _value(holder: Any, name: str, default: Any) -> Any:
    """What a reference leads to, which ``get`` does not follow."""
    return holder[name] if name in holder else default  # noqa: SIM401
