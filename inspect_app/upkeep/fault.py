"""What is wrong in a store: a value with its facts, and how it is told."""

from typing import Any, NamedTuple


class Fault(NamedTuple):
    """``code`` (words: ``upkeep.CODE``, and ``upkeep.CODE.way_out`` for what to do), ``where`` it is (a path below the
    data folder, or a place in the database), ``facts`` of it. ``note``: worth knowing, and nothing is wrong."""

    code: str
    where: str
    facts: dict[str, Any] = {}
    note: bool = False

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"code": self.code, "where": self.where, "facts": self.facts, "note": self.note}
