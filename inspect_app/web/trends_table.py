"""Trends as one long table: a line for every figure, with the entries it rests on."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from inspect_app.web.spreadsheet import Cell
from inspect_app.words import Words

Names = dict[str, dict[str, str]]
Line = dict[str, Cell]
COLUMNS = ("figure", "by", "name", "key", "day", "state", "bad", "looked", "unknown", "share", "low", "high", "hours",
           "entries")  # fmt: skip


class Table(NamedTuple):
    """``told``: as ``record.trends`` gives it; ``names``: ``{kind: {key: name}}``. Columns and states in words, numbers
    plain, shares of one."""

    told: dict[str, Any]
    names: Names
    words: Words
    language: str

    def rows(self) -> Iterator[list[Cell]]:
        """The head and the lines."""
        yield [self.say(f"column.{column}") for column in COLUMNS]
        for part in (self.pareto(), self.shares(), self.agreement(), self.pairs(), self.closing()):
            for line in part:
                yield [line.get(column) for column in COLUMNS]

    def say(self, key: str) -> str:
        return self.words.say(f"trends.{key}", self.language)

    def name(self, kind: str, key: str) -> str:
        known = self.told["crews"] if kind == "crew" else self.names.get(kind, {})
        return str(known.get(key, key)) or self.say("untold.item" if kind == "item" else "untold")

    def because(self, why: dict[str, Any]) -> str:
        return self.words.say(f"reason.{why['code']}", self.language, why["facts"])

    def pareto(self) -> Iterator[Line]:
        for kind, groups in self.told["pareto"]["by"].items():
            for one in groups:
                yield {"figure": self.say("pareto"), "by": self.say(f"by.{kind}"), "name": self.name(kind, one["key"]),
                       "key": one["key"], "bad": one["n"], "looked": one["looks"], "share": one["share"],
                       "entries": " ".join(one["digests"])}  # fmt: skip

    def shares(self) -> Iterator[Line]:
        for series in self.told["shares"]:
            by = f"{series['crew']} · {self.name('assembly', series['assembly'] or '')}"
            for one in (*series["points"], series["whole"]):
                figures: Line = {"figure": self.say("shares"), "by": by, "key": series["name"], "bad": one["found"],
                                 "looked": one["n"], "unknown": one["unknown"], "share": one["share"],
                                 "low": one["low"], "high": one["high"]}  # fmt: skip
                if "lot" in one:
                    yield figures | {"name": one["lot"], "day": one["day"], "entries": " ".join(one["digests"]),
                                     "state": self.say(f"symbol.{one['symbol'] or 'open'}")}  # fmt: skip
                else:
                    yield figures | {"name": self.say("shares.whole")}

    def agreement(self) -> Iterator[Line]:
        for kind in ("panels", "looks"):
            one = self.told["agreement"][kind]
            line: Line = {"figure": self.say("agreement"), "by": self.say(f"agreement.{kind}"), "looked": one["n"]}
            why = one["because"]
            yield line | {"name": "kappa", "share": one["kappa"], "low": one["low"], "high": one["high"],
                          "state": why and self.because(why)}  # fmt: skip
            yield line | {"name": self.say("agreement.same"), "share": one["agreement"]}

    def pairs(self) -> Iterator[Line]:
        found = self.told["agreement"]
        compared = [(f"cell.{pair['cell']}", pair) for pair in found["pairs"]]
        compared += [(f"apart.{why}", pair) for why, pairs in found["apart"].items() for pair in pairs]
        for state, pair in compared:
            yield {"figure": self.say("agreement.pair"), "by": f"{self.name('area', pair['area'])} {pair['panel']}",
                   "name": self.name("item", pair["item"]), "key": pair["item"], "day": pair["day"],
                   "state": self.say(state),
                   "entries": " ".join(pair["foreman"]["digests"] + pair["audit"]["digests"])}  # fmt: skip

    def closing(self) -> Iterator[Line]:
        found = self.told["closing"]
        yield {"figure": self.say("closing"), "name": self.say("closing.median"), "looked": found["n"],
               "hours": found["median"], "day": found["as_of"]}  # fmt: skip
        for one in found["findings"]:
            yield {"figure": self.say("closing"), "name": one["id"], "key": one["id"], "day": one["at"],
                   "state": self.say(f"state.{one['state']}"), "hours": one["hours"],
                   "entries": " ".join([one["digest"], *([one["closed"]] if one["closed"] else [])])}  # fmt: skip
