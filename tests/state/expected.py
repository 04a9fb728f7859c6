"""What the server must hold, told by a few sets: the rules of its intake said once more, in other words."""

from typing import Any, NamedTuple

from inspect_app.entry.format import parse
from inspect_app.entry.pictures import pictures
from tests.state.server import Held

Name = tuple[str, str]  # of a photo: job, sha256


class Known(NamedTuple):
    """An entry that somebody signed."""

    digest: str
    kid: str
    job: str
    by: str
    kind: str
    names: frozenset[str]
    lets_in: str


def known(token: str) -> Known:
    entry = parse(token)
    body: Any = entry.payload["body"]
    admitted = str(body["entry"]) if entry.kind == "admission" else ""
    return Known(entry.digest, entry.kid, entry.job, entry.by, entry.kind, frozenset(pictures(entry.payload)), admitted)


class Expected:
    """``enrolled``: kid → person; ``members``: job → persons; ``chiefs``: persons who may let in."""

    def __init__(self, held: Held, members: dict[str, set[str]], chiefs: set[str]) -> None:
        self.log: set[str] = set(held.log)
        self.apart: set[str] = set()
        self.photos: set[Name] = set()
        self.photos_apart: dict[Name, str] = {}
        self.receipts: dict[Any, str] = {**held.log}
        self.signed: dict[str, Known] = {}
        self.enrolled: dict[str, str] = {}
        self.revoked: set[str] = set()
        self.members, self.chiefs = members, chiefs

    def copy(self) -> "Expected":
        other = object.__new__(Expected)
        other.__dict__ = dict(self.__dict__)
        other.log, other.apart, other.photos = set(self.log), set(self.apart), set(self.photos)
        other.photos_apart = dict(self.photos_apart)
        return other

    def receive(self, digests: list[str]) -> list[str]:
        """The statuses of a batch, a refusal by its code, and what they leave behind."""
        told, taken = [], set()
        for digest in digests:
            one = self.signed[digest]
            if one.kid not in self.enrolled:
                told.append("unknown_key")
            elif digest in self.log | self.apart | taken:
                told.append("duplicate")
            elif one.kid in self.revoked:
                told.append("quarantined")
                taken.add(digest)
            elif one.by in self.members[one.job]:
                told.append("accepted")
                taken.add(digest)
            else:
                told.append("not_a_member")
        return [self._settle(self.signed[one], status) for one, status in zip(digests, told, strict=True)]

    def _settle(self, one: Known, status: str) -> str:
        if status == "quarantined" and any(self._lets_in(self.signed[say], one) for say in self.log & set(self.signed)):
            status = "accepted"
        if status == "accepted":
            self._accept(one)
            waits = self.signed.get(one.lets_in)
            if waits is not None and waits.digest in self.apart and self._lets_in(one, waits):
                self._accept(waits)
        elif status == "quarantined":
            self.apart.add(one.digest)
        elif status == "duplicate" and one.digest not in self.log:
            return "quarantined"
        return status

    def _accept(self, one: Known) -> None:
        self.log.add(one.digest)
        self.apart.discard(one.digest)
        for name in [name for name in self.photos_apart if name[0] == one.job and name[1] in one.names]:
            self._hold(name)

    def _lets_in(self, say: Known, one: Known) -> bool:
        people = self.members[one.job]
        right = say.by in self.chiefs and say.by in people and one.by in people
        return say.lets_in == one.digest and say.job == one.job and right

    def _hold(self, name: Name) -> None:
        self.photos_apart.pop(name, None)
        self.photos.add(name)

    def bring(self, name: Name, kid: str) -> None:
        """All bytes of that photo have come from that key."""
        named = any(name[1] in self.signed[one].names and self.signed[one].job == name[0]
                    for one in self.log & set(self.signed))  # fmt: skip
        if name in self.photos or kid not in self.revoked or named:
            self._hold(name)
        else:
            self.photos_apart.setdefault(name, kid)

    def differs(self, held: Held) -> str:
        """In words, how the server's store is another; empty when it is not. Receipts never change."""
        pairs: list[tuple[str, set[Any], set[Any]]] = [
            ("log", self.log, set(held.log)), ("apart", self.apart, held.apart),
            ("photos", self.photos, set(held.photos)), ("photos apart", set(self.photos_apart), set(held.photos_apart)),
        ]  # fmt: skip
        told = [f"{name}: lost {wanted - found}, unexpected {found - wanted}" for name, wanted, found in pairs
                if wanted != found]  # fmt: skip
        for name, receipt in [*held.log.items(), *held.photos.items()]:
            if self.receipts.setdefault(name, receipt) != receipt:
                told.append(f"another receipt for {name}")
        return "; ".join(told)
