"""The structure tree of a tagged PDF (ISO 32000-1, 14.7 and 14.8): what is a heading, a paragraph, a table, a figure.

Elements are made while the pages are drawn and written at the end; they hold words and numbers, never a picture. A
report of many photos has thousands of them: each is small, and is written without the PDF library's objects."""

from typing import Any

from reportlab.pdfbase import pdfdoc


class Element:
    """One element: its role, what it stands in, and its kids: elements, ``(page, mark)`` and ``(page, annotation)``."""

    __slots__ = ("alt", "columns", "kids", "number", "parent", "role", "scope")

    def __init__(self, role: str, parent: "Element | None", alt: str = "", scope: str = "") -> None:
        self.role, self.parent, self.alt, self.scope = role, parent, alt, scope
        self.kids: list[Any] = []
        self.columns = self.number = 0  # of a table; of the object that it is in the file

    def written(self, document: Any, above: int) -> bytes:
        """The element as the file has it; ``above``: the number of the object that the topmost element stands in."""
        told = f"/S /{self.role} /P {self.parent.number if self.parent else above} 0 R"
        pages = {kid[0].number for kid in self.kids if not isinstance(kid, Element)}
        here = pages.pop() if len(pages) == 1 else None
        if here is not None:
            told += f" /Pg {here} 0 R"
        if self.kids:
            kids = [self._kid(kid, here, document) for kid in self.kids]
            told += f" /K {kids[0]}" if len(kids) == 1 else f" /K [{' '.join(kids)}]"
        if self.scope:
            told += f" /A <</O /Table /Scope /{self.scope}>>"
        alt = b" /Alt " + pdfdoc.PDFString(self.alt).format(document) if self.alt else b""
        return b"<<" + told.encode("ascii") + alt + b">>"

    def _kid(self, kid: Any, here: int | None, document: Any) -> str:
        if isinstance(kid, Element):
            return f"{kid.number} 0 R"
        page, item = kid
        if page.number == here and isinstance(item, int):
            return str(item)
        if isinstance(item, int):
            return f"<</Type /MCR /Pg {page.number} 0 R /MCID {item}>>"
        return f"<</Type /OBJR /Pg {page.number} 0 R /Obj {number_of(document, item)} 0 R>>"


class TaggedPage(pdfdoc.PDFPage):  # type: ignore[misc]
    """A page that knows its place in the parent tree; its annotations are visited in the order of the structure."""

    __NoDefault__ = [*pdfdoc.PDFPage.__NoDefault__, "StructParents", "Tabs"]


class TaggedLink(pdfdoc.LinkAnnotation):  # type: ignore[misc]
    """A link that knows its place in the parent tree."""

    __RefOnly__ = 1
    permitted = (*pdfdoc.LinkAnnotation.permitted, "StructParent")


class Page:
    """The page being drawn: it stands for the real one, which exists only once it is complete."""

    __slots__ = ("number", "real")

    def __init__(self) -> None:
        self.real: Any = None
        self.number = 0


class Structure:
    """The tree of one document. ``open``: the elements that what is drawn now stands in."""

    def __init__(self) -> None:
        self.top = Element("Document", None)
        self.open = [self.top]
        self.parents: list[Any] = []  # by key in the parent tree: an element, or a page's elements by mark
        self.pages: list[Page] = []
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
        self.parents.append(value)
        return len(self.parents) - 1

    def close_page(self, page: Any) -> None:
        """``page`` is what was drawn since the last."""
        page.__class__ = TaggedPage
        self.page.real = page
        self.pages.append(self.page)
        page.Tabs = pdfdoc.PDFName("S")
        if self.marked:
            page.StructParents = self.key(self.marked)
        self.page, self.marked = Page(), []

    def root(self, document: Any) -> tuple[Any, list[Element]]:
        """The ``StructTreeRoot``, and every element beneath it in the order of the numbers that are kept for them in
        ``document`` from now on."""
        for page in self.pages:
            page.number = number_of(document, page.real)
        elements = [self.top]
        for one in elements:  # which grows meanwhile
            elements += [kid for kid in one.kids if isinstance(kid, Element)]
        for number, one in enumerate(elements, document.objectcounter + 1):
            one.number = number
        document.objectcounter += len(elements)
        leads = [f"[{' '.join(f'{one.number} 0 R' for one in value)}]" if isinstance(value, list)
                 else f"{value.number} 0 R" for value in self.parents]  # fmt: skip
        numbers = " ".join(f"{key} {value}" for key, value in enumerate(leads))
        root = pdfdoc.PDFDictionary({
            "Type": pdfdoc.PDFName("StructTreeRoot"),
            "K": f"{self.top.number} 0 R",
            "ParentTree": f"<</Nums [{numbers}]>>",
            "ParentTreeNextKey": len(self.parents),
        })  # fmt: skip
        return root, elements


def number_of(document: Any, thing: Any) -> int:
    """The number of an object that ``document`` knows."""
    return int(document.idToObjectNumberAndVersion[thing.__InternalName__][0])
