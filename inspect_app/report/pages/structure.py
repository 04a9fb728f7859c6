"""The structure tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8): what is a heading, a paragraph, a table, a figure.

Elements are made while the pages are drawn and written at the end; they hold words and numbers, never a picture."""

from typing import Any

from reportlab.pdfbase import pdfdoc


class Element(pdfdoc.PDFObject):  # type: ignore[misc]
    """One element: its role, what it stands in, and its kids: elements, ``(page, mark)`` and ``(page, annotation)``."""

    __RefOnly__ = 1
    columns = 0  # of a table

    def __init__(self, role: str, parent: Any, alt: str = "", scope: str = "") -> None:
        self.role, self.parent, self.alt, self.scope = role, parent, alt, scope
        self.kids: list[Any] = []

    def format(self, document: Any) -> bytes:
        told: dict[str, Any] = {"S": pdfdoc.PDFName(self.role), "P": document.Reference(self.parent)}
        if self.alt:
            told["Alt"] = pdfdoc.PDFString(self.alt)
        if self.scope:
            told["A"] = pdfdoc.PDFDictionary({"O": pdfdoc.PDFName("Table"), "Scope": pdfdoc.PDFName(self.scope)})
        pages = {id(kid[0]): kid[0] for kid in self.kids if not isinstance(kid, Element)}
        here = next(iter(pages.values())) if len(pages) == 1 else None
        if here is not None:
            told["Pg"] = document.Reference(here)
        if self.kids:
            kids = [self._kid(kid, here, document) for kid in self.kids]
            told["K"] = kids[0] if len(kids) == 1 else pdfdoc.PDFArray(kids)
        return pdfdoc.PDFDictionary(told).format(document)  # type: ignore[no-any-return]

    def _kid(self, kid: Any, here: Any, document: Any) -> Any:
        if isinstance(kid, Element):
            return document.Reference(kid)
        page, item = kid
        if page is here and isinstance(item, int):
            return item
        told: dict[str, Any] = {"Pg": document.Reference(page)}
        if isinstance(item, int):
            told |= {"Type": pdfdoc.PDFName("MCR"), "MCID": item}
        else:
            told |= {"Type": pdfdoc.PDFName("OBJR"), "Obj": document.Reference(item)}
        return pdfdoc.PDFDictionary(told)


class TaggedPage(pdfdoc.PDFPage):  # type: ignore[misc]
    """A page that knows its place in the parent tree; its annotations are visited in the order of the structure."""

    __NoDefault__ = [*pdfdoc.PDFPage.__NoDefault__, "StructParents", "Tabs"]


class TaggedLink(pdfdoc.LinkAnnotation):  # type: ignore[misc]
    """A link that knows its place in the parent tree."""

    __RefOnly__ = 1
    permitted = (*pdfdoc.LinkAnnotation.permitted, "StructParent")


class Page:
    """The page being drawn: it stands for the real one, which exists only once it is complete."""

    real: Any = None


class Structure:
    """The tree of one document. ``open``: the elements that what is drawn now stands in."""

    def __init__(self) -> None:
        self.top = Element("Document", None)
        self.open = [self.top]
        self.parents: list[tuple[int, Any]] = []  # key in the parent tree, element or a page's elements by mark
        self.keys = 0
        self.page, self.marked = Page(), list[Element]()

    def begin(self, role: str, alt: str = "", scope: str = "") -> Element:
        """A new element in the one that is open; it is open from now on."""
        inside = self.open[-1]
        element = Element(role, inside, alt, scope)
        inside.kids.append(element)
        self.open.append(element)
        return element

    def begin_table(self, columns: int) -> Element:
        """The table that was drawn last, where nothing came between and its rows are as wide; else a new one."""
        last = self.open[-1].kids[-1] if self.open[-1].kids else None
        if isinstance(last, Element) and last.role == "Table" and last.columns == columns:
            self.open.append(last)
            return last
        table = self.begin("Table")
        table.columns = columns
        return table

    def end(self) -> None:
        self.open.pop()

    def mark(self) -> int:
        """The number of the next marked content of this page, which belongs to the open element."""
        self.open[-1].kids.append((self.page, len(self.marked)))
        self.marked.append(self.open[-1])
        return len(self.marked) - 1

    def key(self, value: Any) -> int:
        """The next key of the parent tree, leading to ``value``."""
        self.parents.append((self.keys, value))
        self.keys += 1
        return self.keys - 1

    def close_page(self, page: Any) -> None:
        """``page`` is what was drawn since the last."""
        page.__class__ = TaggedPage
        self.page.real = page
        page.Tabs = pdfdoc.PDFName("S")
        if self.marked:
            page.StructParents = self.key(self.marked)
        self.page, self.marked = Page(), []

    def root(self, document: Any) -> Any:
        """The ``StructTreeRoot`` with the whole tree beneath it."""
        _settle(self.top)
        numbers: list[Any] = []
        for key, value in self.parents:
            kept = [document.Reference(one) for one in value] if isinstance(value, list) else document.Reference(value)
            numbers += [key, pdfdoc.PDFArray(kept) if isinstance(kept, list) else kept]
        root = pdfdoc.PDFDictionary({
            "Type": pdfdoc.PDFName("StructTreeRoot"),
            "K": document.Reference(self.top),
            "ParentTree": pdfdoc.PDFDictionary({"Nums": pdfdoc.PDFArray(numbers)}),
            "ParentTreeNextKey": self.keys,
        })  # fmt: skip
        self.top.parent = root
        return root


def _settle(element: Element) -> None:
    """Put the real pages in the place of those that stood for them."""
    waiting = [element]
    while waiting:
        one = waiting.pop()
        one.kids = [kid if isinstance(kid, Element) else (kid[0].real, kid[1]) for kid in one.kids]
        waiting += [kid for kid in one.kids if isinstance(kid, Element)]
