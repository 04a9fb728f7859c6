"""What a PDF says of itself beside its pages: title, author, subject (ISO 32000-1, 14.3).

Validators let any later signature change it, since programs write down there that they touched the file. Anybody
could so give a sealed report another title: here only that note, the program and the time, may change.
"""

from io import BytesIO
from typing import Any

from pyhanko.pdf_utils.metadata.xmp_xml import parse_xmp
from pyhanko.pdf_utils.reader import PdfFileReader

TOUCHED = ("ModDate", "ModifyDate", "MetadataDate", "Producer", "InstanceID")


def same_information(reader: PdfFileReader, revision: int) -> bool:
    """Whether the file says of itself what it said at ``revision``. A damaged file raises whatever the reader does."""
    return _information(reader.get_historical_resolver(revision)) == _information(reader)


def _information(view: Any) -> tuple[dict[str, str], list[dict[Any, Any]]]:
    told = _resolved(view, view.trailer_view, "/Info") or {}
    xmp = _resolved(view, _resolved(view, view.trailer_view, "/Root"), "/Metadata")
    roots = parse_xmp(BytesIO(xmp.data)) if xmp is not None else []
    return (
        {name: str(_resolved(view, told, name)) for name in told if name[1:] not in TOUCHED},
        [{name: value for name, value in root if name.local_name not in TOUCHED} for root in roots],
    )


def _resolved(view: Any, within: Any, name: str) -> Any:
    """The value as it stood in the view's own revision: a dictionary asked by itself answers from the last one."""
    if name not in within:
        return None
    value = within.raw_get(name)
    return view.get_object(value.reference) if hasattr(value, "reference") else value
