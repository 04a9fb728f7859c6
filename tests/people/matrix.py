"""``matrix.txt``: which call answers what to whom. ``python -m tests.people.matrix`` prints it as the server answers.

A row is a call, its case in braces if it is asked in several, and a word for each asker: ``yes`` or what came of it, or
the status of the refusal.
"""

from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any, NamedTuple

from tests.office import Office
from tests.people.asks import Asking
from tests.people.world import ASKERS, World

FILE = Path(__file__).with_name("matrix.txt")


class Row(NamedTuple):
    method: str
    rule: str
    case: str
    cells: tuple[str, ...]


def read(text: str) -> list[Row]:
    rows = []
    for line in text.splitlines():
        if not line.strip() or line.startswith("#"):
            continue
        call, _, cells = line.partition("|")
        call, _, case = call.partition("{")
        method, rule = call.split()
        rows.append(Row(method, rule, case.strip().removesuffix("}"), tuple(cells.split())))
    return rows


def calls(app: Any) -> set[tuple[str, str]]:
    """Every route of the app with each of its methods; HEAD where it is a call of its own."""
    found = set()
    for rule in app.url_map.iter_rules():
        methods = rule.methods - {"OPTIONS"}
        found |= {(method, rule.rule) for method in methods if method != "HEAD" or "GET" not in methods}
    return found


def printed(rows: list[Row]) -> list[str]:
    width = max(len(_call(row)) for row in rows)
    columns = [max(len(name), *(len(row.cells[at]) for row in rows)) for at, name in enumerate(ASKERS)]
    head = "# " + "call".ljust(width - 2) + " | " + " ".join(map(str.ljust, ASKERS, columns)).rstrip()
    cells = [" ".join(map(str.ljust, row.cells, columns)).rstrip() for row in rows]
    return [head, *(f"{_call(row).ljust(width)} | {line}" for row, line in zip(rows, cells, strict=True))]


def _call(row: Row) -> str:
    return f"{row.method} {row.rule}" + (f" {{{row.case}}}" if row.case else "")


if __name__ == "__main__":
    with TemporaryDirectory() as folder:
        asking = Asking(World(Office(Path(folder) / "data")))
        now = [row._replace(cells=tuple(asking.status(asker, *row[:3])[0] for asker in ASKERS))
               for row in read(FILE.read_text("utf-8"))]  # fmt: skip
    print(*printed(now), sep="\n")
