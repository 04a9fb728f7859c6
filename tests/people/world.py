"""One server with two jobs that know nothing of each other, several firms, and somebody in every position to them."""

import hashlib
from typing import Any

from tests.evidence.sealed import key, sealed_with
from tests.office import Office
from tests.phone import Phone, new_uuid

ROLES = ("foreman", "inspector", "reviewer", "administrator", "engineer", "owner")
ASKERS = ("nobody", *ROLES, "sub", "narrowed", "stranger", "revoked")
PICTURES = {"theirs": b"a picture of the sub's own area", "others": b"a picture of the other area, not for the sub",
            "elsewhere": b"a picture of another job", "apart": b"a picture that a revoked phone brought"}  # fmt: skip
SHA = {name: hashlib.sha256(data).hexdigest() for name, data in PICTURES.items()}


class World:
    """``phones``: each asker's, but nobody's. ``job``: the one asked about; its area ``own`` is the sub's, ``other`` is
    not. ``narrowed``: an administrator whose firm was given no area. ``stranger``: the administrator of another job."""

    def __init__(self, office: Office) -> None:
        self.office, self.parts = office, office.parts
        self.job, self.own, self.other = new_uuid(), new_uuid(), new_uuid()
        self.phones: dict[str, Phone] = {"administrator": office.phone("administrator", "administrator")}
        chief = self.phones["administrator"]
        self.said = self._sent(chief, chief.job(self.job, name="Quay works, not for strangers"))
        with office.app.app_context():
            join = office.app.extensions["office"].firms.join
            firms = {"whole": join(self.job, "Tidewrack (invented)", "contractor", None).id,
                     "sub": join(self.job, "Gannet (invented)", "sub", [self.own]).id,
                     "narrowed": join(self.job, "Dunlin (invented)", "sub", []).id}  # fmt: skip
        self.firms = firms
        others = [(role, role) for role in ROLES if role != "administrator"]
        for name, role in [*others, ("sub", "foreman"), ("revoked", "foreman"), ("narrowed", "administrator")]:
            self.phones[name] = office.phone(name, role, self.job)
        with office.app.app_context():
            for name, phone in self.phones.items():
                self.parts.membership.place(phone.person.id, self.job, firms.get(name, firms["whole"]))
        self.elsewhere, stranger = office.job()
        self.phones["stranger"] = stranger
        self._record()
        with office.app.app_context():
            self.parts.devices.revoke(self.phones["revoked"].kid, "server")
        apart = self.phones["revoked"].entry("area", self.job)
        self.phones["revoked"].send(apart)
        self.apart = apart

    def _record(self) -> None:
        """An area each, a walk on each with a photo, and a report."""
        chief, inspector = self.phones["administrator"], self.phones["inspector"]
        self._sent(chief, chief.entry("area", self.job, self.own, {"name": "The sub's area"}))
        unseen = [chief.entry("area", self.job, self.other, {"name": "The area of others"})]
        seen = []
        for area, tokens, name in ((self.own, seen, "theirs"), (self.other, unseen, "others")):
            walk, station = new_uuid(), new_uuid()
            tokens += [
                inspector.entry("walk", self.job, walk, {"areas": [area], "placed": []}),
                inspector.entry("station", self.job, station, {"walk": walk, "area": area}),
                inspector.entry("photo", self.job, SHA[name], {"walk": walk, "station": station, "sha256": SHA[name]}),
            ]
        self._sent(chief, unseen[0])
        self._sent(inspector, *seen, *unseen[1:])
        self.unseen = unseen
        with self.office.app.app_context():
            for name, job in (("theirs", self.job), ("others", self.job), ("elsewhere", self.elsewhere)):
                self.parts.vault.put([PICTURES[name]], SHA[name])
                self.parts.log.receive_photo(job, SHA[name], len(PICTURES[name]), "image/jpeg")
            shelf = self.office.app.extensions["reports"].shelf
            number, sealed = shelf.begin(self.job), shelf.work(self.job) / "sealed.part"
            sealed.write_bytes(sealed_with(key("The area of others")))
            shelf.finish(self.job, number, sealed, b'{"missing": []}', "d", 1)

    def _sent(self, phone: Phone, *tokens: str) -> list[str]:
        assert [one["status"] for one in phone.send(*tokens).json["answers"]] == ["accepted"] * len(tokens)
        return list(tokens)

    def secrets(self, asker: str) -> list[bytes]:
        """What no answer to this asker may hold."""
        others = [text.encode() for name in ("owner", "reviewer", "engineer") for text in self._of(name)]
        beyond = ["The area of others", *self.unseen, self.apart, PICTURES["others"].decode()]
        if asker in ("sub", "narrowed"):
            return [*others, *(text.encode() for text in beyond), PICTURES["elsewhere"]]
        if asker in ("nobody", "stranger"):
            own = ["Quay works, not for strangers", "The sub's area", PICTURES["theirs"].decode(), *self.said]
            elsewhere = [PICTURES["elsewhere"]] if asker == "nobody" else []
            return [*others, *(text.encode() for text in [*beyond, *own]), *elsewhere]
        return [PICTURES["elsewhere"], self.phones["stranger"].kid.encode()]

    def _of(self, name: str) -> list[Any]:
        phone = self.phones[name]
        return [phone.kid, phone.person.id, phone.person.name]
