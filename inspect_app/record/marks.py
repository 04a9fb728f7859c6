"""Marks: "panels to 16 set". What was set, what that covered, and what one key's own order proves.

No clock is read. Within one key's chain ``seq`` says what came first; between keys nothing does.
"""

from inspect_app.record.ranges import holds, merged


class Marks:
    """Every mark of the job that names a known lot of its area.

    ``of[root lot]``: the marks that stand, ``{"digest", "kid", "seq", "lot", "area", "to", "body", "at", "versions"}``,
    in order of ``to``, ``seq`` and digest; ``versions`` ``[(kid, seq, to, digest)]``. A corrected mark counts from its
    first saying. ``roots``: ``{lot of work: the lot it extends in the end}``; ``families[root]``: the root and what
    extends it.
    """

    def __init__(self, grouped: dict, lots: dict, rows: dict, roots: dict) -> None:
        self.lots, self.rows, self.roots = lots, rows, roots
        self.families: dict = {}
        for one in sorted(roots):
            self.families.setdefault(roots[one], []).append(one)
        self.of: dict = {}
        self.against: dict = {}  # (root, panel): [(kid, seq)] of every version ever said
        self.unknown: list = []  # entries of a lot that is not here, or of an area it does not speak of
        self.moved: list = []  # (digest, older digest, to): a mark that is of another lot or area since
        self._steps: dict = {}  # (area, kid): [(from, to, seq)]
        self._covered: dict = {}  # (area, kid): {panel: seq}, as asked so far: every look asks
        for subject in sorted(grouped):
            self._take(grouped[subject])
        for root in self.of:
            self.of[root].sort(key=lambda mark: (mark["to"], mark["seq"], mark["digest"]))

    def _take(self, group: dict) -> None:
        for entry in group["all"]:
            body = entry["payload"]["body"]
            root = self._root(body)
            if root is None:
                self.unknown.append(entry)
                continue
            for panel in body.get("against") or []:
                said = self.against.setdefault((root, panel), [])
                said.append((entry["kid"], entry["payload"]["seq"]))
        for entry in group["heads"]:
            payload = entry["payload"]
            body = payload["body"]
            root = self._root(body)
            for older in group["all"]:
                said = older["payload"]["body"]
                if self._root(said) and (said["lot"], said["area"]) != (body.get("lot"), body.get("area")):
                    self.moved.append((entry["digest"], older["digest"], said["to"]))
            if root is None:
                continue
            mark = {
                "digest": entry["digest"], "kid": entry["kid"], "seq": payload["seq"], "lot": body["lot"],
                "area": body["area"], "to": body["to"], "body": body, "at": payload["at"], "versions": [],
            }  # fmt: skip
            for older in group["all"]:
                said = older["payload"]["body"]
                if said.get("lot") == body["lot"] and said.get("area") == body["area"]:
                    mark["versions"].append((older["kid"], older["payload"]["seq"], said["to"], older["digest"]))
            self.of.setdefault(root, []).append(mark)
            low = self.begins(body["lot"])
            for kid, seq, to, _ in mark["versions"]:
                self._steps.setdefault((body["area"], kid), []).append((low, min(to, body["to"]), seq))

    def _root(self, body: dict) -> "str | None":
        lot = self.lots.get(body.get("lot"))
        if lot is None or type(body.get("to")) is not int or not self.rows[body["lot"]]:
            return None
        if lot["purpose"] != "work" or self.rows[body["lot"]][0][0] != body.get("area"):
            return None
        root: str = self.roots[body["lot"]]
        return root

    def begins(self, lot_id: str) -> int:
        """The first panel that a mark of this lot speaks of: an extension that goes on where its lot ended speaks of
        both."""
        low: int = self.rows[lot_id][0][1]
        while True:
            after, lot_id = lot_id, self.lots[lot_id].get("extends")
            if self.roots.get(after) != self.roots.get(lot_id):  # another crew's, another day's
                return low
            rows = self.rows.get(lot_id)
            if not rows or self.lots[lot_id]["purpose"] != "work" or rows[0][2] + 1 != low:
                return low
            low = rows[0][1]

    def placed(self, root: str) -> list:
        """The ranges of panels set under a lot and its extensions."""
        return merged([[self.begins(mark["lot"]), mark["to"]] for mark in self.of.get(root, [])])

    def set_at(self, area: str, kid: str, panel: int) -> "int | None":
        """The earliest ``seq`` at which this key said that the panel is set."""
        said = [seq for low, to, seq in self._steps.get((area, kid), []) if low <= panel <= to]
        return min(said) if said else None

    def covered_before(self, area: str, panel: int, kid: str, seq: int) -> bool:
        """Whether this key's own chain proves that the panel was covered before ``seq``: it and the next were set."""
        at = self.covered_at(area, panel, kid)
        return at is not None and at < seq

    def covered_at(self, area: str, panel: int, kid: str) -> "int | None":
        """The ``seq`` at which this key said that the panel is covered: it and the next are set."""
        known = self._covered.setdefault((area, kid), {})
        if panel not in known:
            own, following = self.set_at(area, kid, panel), self.set_at(area, kid, panel + 1)
            known[panel] = None if own is None or following is None else max(own, following)
        told: int | None = known[panel]
        return told


def covered(placed: list, panel: int) -> bool:
    """Whether the leg of a panel is hidden: the panel and the next are set. ``placed``: ranges of the whole area."""
    return holds(placed, panel) and holds(placed, panel + 1)
