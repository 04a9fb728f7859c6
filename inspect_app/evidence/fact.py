"""One thing that verification found out."""

from typing import Any, NamedTuple

HOLDS, FAILS, UNKNOWN = "holds", "fails", "not_determinable"


class Fact(NamedTuple):
    """``name``; ``status`` (``holds``, ``fails``, ``not_determinable``); ``reason``, a code, where it does
    not
    hold; ``about``: the facts of it. Words: ``report.verify.NAME`` and ``report.verify.reason.REASON``."""

    name: str
    status: str
    reason: str | None = None
    about: dict[str, Any] = {}

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {"name": self.name, "status": self.status, "reason": self.reason, "about": self.about}
