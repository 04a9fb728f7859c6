"""Releases: who let a held leg be covered, and whether anybody had looked at it by then."""

from inspect_app.record.authority import objection


class Releases:
    """Every release by somebody who may: ``of[(root lot, panel, why)]`` as ``[{"digest", "kid", "seq", "walk"}]``, by
    digest. A release once said stays said. ``unknown``: entries of a lot that is not here."""

    def __init__(self, grouped: dict, people: dict, roots: dict) -> None:
        self.of: dict = {}
        self.unknown: list = []
        for subject in sorted(grouped):
            for entry in grouped[subject]["all"]:
                body = entry["payload"]["body"]
                if body.get("lot") not in roots:
                    self.unknown.append(entry)
                elif not objection(entry, people):
                    name = (roots[body["lot"]], body.get("panel"), body.get("why"))
                    self.of.setdefault(name, []).append({
                        "digest": entry["digest"], "kid": entry["kid"], "seq": entry["payload"]["seq"],
                        "walk": body.get("walk"),
                    })  # fmt: skip


def unseen(release: dict, seen: list, area: str, begun: dict, record: dict, grouped: dict) -> bool:
    """Whether a release was given though nobody had recorded a look: none at a place of the panel (``seen``, as of
    ``Looks.seen``), and no answer of the walk it names. ``begun``: ``{"kid", "seq"}`` of the lot; what its own key said
    before the lot was drawn is a look at something else."""
    for look in seen:
        if not _after(look["firsts"], release):
            return False
    walk = record["walks"].get(release["walk"])
    if walk is None or area not in (walk.get("areas") or []):
        return True
    for subject in walk["answers"]:
        said = [(entry["kid"], entry["payload"]["seq"]) for entry in grouped["answer"][subject]["all"]]
        if not _after(said, release) and not any(kid == begun["kid"] and seq < begun["seq"] for kid, seq in said):
            return False
    return True


def _after(firsts: list, release: dict) -> bool:
    return any(kid == release["kid"] and seq > release["seq"] for kid, seq in firsts)
