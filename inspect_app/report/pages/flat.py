"""Write a PDF of many photos in flat memory: pictures are read when they are written, one at a time.

It follows ``PDFDocument.format`` of the pinned ReportLab; a test holds its bytes against the stock writer's.
"""

import os
import shutil
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from copy import copy
from pathlib import Path
from typing import Any, BinaryIO

from reportlab.lib.rl_accel import fp_str
from reportlab.pdfbase import pdfdoc, pdfutils
from reportlab.pdfgen.canvas import Canvas

from inspect_app.report.pages.structure import Element, Structure, TaggedLink, number_of

COPIED = 1 << 20  # bytes of a picture at a time


class JpegFile(pdfdoc.PDFObject):  # type: ignore[misc]
    """A JPEG by path. ``ValueError`` for what is no plain grey or colour JPEG."""

    def __init__(self, source: Path) -> None:
        self.path = source
        try:
            with open(source, "rb") as file:
                self.size = os.fstat(file.fileno()).st_size
                if file.read(2) != b"\xff\xd8":
                    raise ValueError("not a JPEG")
                file.seek(-2, 2)
                if file.read(2) != b"\xff\xd9":
                    raise ValueError("a JPEG without its end")
                file.seek(0)
                self.width, self.height, bands, _ = pdfutils.readJPEGInfo(file)
        except ValueError:
            raise
        except Exception as reason:  # the header reader fails in its own ways on a damaged file
            raise ValueError(str(reason)) from reason
        if bands not in (1, 3) or not self.width or not self.height:
            raise ValueError(f"a JPEG of {bands} bands")
        self.colorSpace = "DeviceGray" if bands == 1 else "DeviceRGB"

    def head(self) -> bytes:
        """All of the object that comes before the picture's own bytes."""
        told = {"BitsPerComponent": 8, "ColorSpace": f"/{self.colorSpace}", "Filter": "[ /DCTDecode ]",
                "Height": self.height, "Length": self.size, "Subtype": "/Image", "Type": "/XObject",
                "Width": self.width}  # fmt: skip
        lines = [f"/{name} {value}" for name, value in told.items()]
        return b"<<\n" + " ".join([*lines[:6], "\n ", *lines[6:]]).encode("ascii") + b"\n>>\nstream\n"

    def format(self, document: Any) -> bytes:
        return self.head() + self.path.read_bytes() + b"endstream\n"


class _Sink(pdfdoc.PDFFile):  # type: ignore[misc]
    """ReportLab's collector of a file, writing through instead of collecting."""

    strings: list[bytes]

    def __init__(self, out: BinaryIO, version: Any) -> None:
        self._out = out
        super().__init__(version)
        for part in self.strings:
            out.write(part)
        self.strings = []
        self.write = out.write

    def copy(self, path: Path, size: int) -> None:
        """Add a file as it is. ``OSError`` where it is no longer of that size, which is written before it."""
        with open(path, "rb") as source:
            shutil.copyfileobj(source, self._out, COPIED)
            if source.tell() != size:
                raise OSError(f"{path} changes while it is printed")
            self.offset += size

    def format(self, document: Any) -> bytes:
        return b""


class FlatDocument(pdfdoc.PDFDocument):  # type: ignore[misc]
    """A document that is written object by object to ``sink``."""

    sink: BinaryIO | None
    elements: list[Element]  # of the structure, whose numbers are kept in one piece
    above: int  # the number of what the topmost of them stands in

    def SaveToFile(self, filename: Any, canvas: Any) -> None:
        if self.sink is not None:  # without one it is the counting pass, and no photo need be read
            super().SaveToFile(filename, canvas)

    def format(self) -> bytes:
        self.encrypt.prepare(self)
        root, info = self.Reference(self.Catalog), self.Reference(self.info)
        assert self.sink is not None
        self.__accum__ = file = _Sink(self.sink, self._pdfVersion)
        offsets: list[int] = []
        while len(offsets) < self.objectcounter:  # which grows while objects are written
            name = self.numberToId.get(len(offsets) + 1)
            if name is not None:
                offsets.append(self._object(file, len(offsets) + 1, self.idToObject[name]))
            else:
                for one in self.elements:
                    offsets.append(file.add(b"%d 0 obj\n%b\nendobj\n" % (one.number, one.written(self, self.above))))
        table = [f"xref\n0 {len(offsets) + 1}\n0000000000 65535 f \n", *(f"{at:010d} 00000 n \n" for at in offsets)]
        start = file.add("".join(table))
        trailer = pdfdoc.PDFTrailer(
            startxref=start, Size=len(offsets) + 1, Root=root, Info=info, Encrypt=None, ID=self.ID()
        )
        file.add(trailer.format(self))
        return b""

    def _object(self, file: _Sink, number: int, thing: Any) -> int:
        """Where in the file it begins."""
        begin = file.offset
        file.add(b"%d 0 obj\n" % number)
        if isinstance(thing, JpegFile):
            file.add(thing.head())
            file.copy(thing.path, thing.size)
            file.add(b"endstream\nendobj\n")
        else:
            written = pdfdoc.format(thing, self, toplevel=1)
            file.add(written if written.endswith(b"\n") else written + b"\n")
            file.add(b"endobj\n")
        return begin


class FlatCanvas(Canvas):  # type: ignore[misc]
    """A canvas over a ``FlatDocument``; ``photo`` draws a JPEG without ever holding its pixels."""

    def __init__(self, filename: Any, **more: Any) -> None:
        self.structure, self._inside = Structure(), False
        self.link_words: Callable[[str], str] = str  # what a link to that mark is called
        super().__init__(filename, **more)
        self._doc.__class__ = FlatDocument
        self._doc.sink = filename
        self.counting = filename is None  # nothing is written: what takes no part in the counting need not be drawn

    @contextmanager
    def marked(self, role: str, alt: str = "", scope: str = "") -> Iterator[None]:
        """What is drawn meanwhile is an element of that role; within another marked content it is part of that."""
        if self._inside:
            yield
            return
        self.structure.begin(role, alt, scope)
        with self._content(f"/{role} <</MCID {self.structure.mark()}>> BDC"):
            yield
        self.structure.end()

    @contextmanager
    def group(self, role: str, scope: str = "") -> Iterator[None]:
        """The elements that are drawn meanwhile stand in one of that role."""
        self.structure.begin(role, "", scope)
        yield
        self.structure.end()

    @contextmanager
    def table_row(self, columns: int) -> Iterator[None]:
        """The cells that are drawn meanwhile are a row of the table drawn last, or of a new one."""
        self.structure.begin_table(columns)
        with self.group("TR"):
            yield
        self.structure.end()

    @contextmanager
    def artifact(self, kind: str = "") -> Iterator[None]:
        """What is drawn meanwhile is no part of what the document says: rules, running heads."""
        if self._inside:
            yield
            return
        with self._content(f"/Artifact <</Type /Pagination /Subtype /{kind}>> BDC" if kind else "/Artifact BMC"):
            yield

    @contextmanager
    def _content(self, begin: str) -> Iterator[None]:
        self._code.append(begin)
        self._inside = True
        yield
        self._inside = False
        self._code.append("EMC")

    def linkRect(self, contents: str, destinationname: str, Rect: Any = None, **more: Any) -> Any:
        """A link to a mark of this document, in the structure a ``Link`` of what is being drawn."""
        settings = {"Border": "[0 0 0]", "Rect": self._absRect(Rect, more.get("relative", 1)),
                    "Contents": contents or self.link_words(destinationname),
                    "Destination": self._bookmarkReference(destinationname)}  # fmt: skip
        link = TaggedLink(**settings)
        self._addAnnotation(link)
        element = self.structure.begin("Link")
        self.structure.end()
        element.kids.append((self.structure.page, link))
        link.otherkw["StructParent"] = self.structure.key(element)

    def _setAnnotations(self, page: Any) -> None:
        super()._setAnnotations(page)
        if self.structure.top.kids:  # a document that marks nothing stays as ReportLab would write it
            self.structure.close_page(page)

    def save(self) -> None:
        if self._code:
            self.showPage()
        for target in self._destinations.values():
            if target.fmt is None:  # nothing of that name was drawn: no reason to have no report
                target.fit()
                target.setPage(self._doc.Reference(self._doc.idToObject["Page1"]))
        if self.structure.top.kids and self._doc.sink is not None:
            catalog = self._doc.Catalog
            root, self._doc.elements = self.structure.root(self._doc)
            catalog.StructTreeRoot = self._doc.Reference(root)
            self._doc.above = number_of(self._doc, root)
            catalog.MarkInfo = pdfdoc.PDFDictionary({"Marked": "true"})
        super().save()

    def photo(self, name: str, picture: JpegFile, x: float, y: float, width: float, height: float) -> None:
        """Draw the JPEG under a ``name`` of its own (its hash): the same name is stored once."""
        name = f"photo-{name}"
        registered = self._doc.getXObjectName(name)
        if registered not in self._doc.idToObject:
            self._doc.addForm(name, copy(picture))  # a document writes its own name on it; the next pass is another
        self._code.append(f"q {fp_str(width, 0, 0, height, x, y)} cm /{registered} Do Q")
        self._formsinuse.append(name)
