"""Let in what was kept apart: the entry that an administrator's ``admission`` names, with the photos it names.

An admission is good from an administrator of the job who sees the whole of it, for an entry of the same job that one of
its members signed. It may come before its entry, which is then taken like any other.
"""

from inspect_app.entry.format import Entry, parse
from inspect_app.entry.pictures import pictures
from inspect_app.people.accounts import Accounts
from inspect_app.people.firms import Firms
from inspect_app.people.membership import Membership
from inspect_app.people.rights import may
from inspect_app.people.trail import Trail
from inspect_app.store.log import Log
from inspect_app.store.log_reading import LogReading
from inspect_app.store.quarantine import Quarantine

KIND = "admission"


class Admissions:
    """Every method is to be called while the store is being written: what moves, moves in that transaction."""

    def __init__(
        self, log: Log, reading: LogReading, quarantine: Quarantine, accounts: Accounts, membership: Membership,
        firms: Firms, trail: Trail,
    ) -> None:  # fmt: skip
        self.log, self.reading, self.quarantine = log, reading, quarantine
        self.accounts, self.membership, self.firms, self.trail = accounts, membership, firms, trail

    def accepted(self, entry: Entry) -> None:
        """An entry has its receipt: if it lets another in, that one gets its own; photos kept apart that either names
        get theirs. Said again, nothing more happens."""
        self._photos(entry)
        kept = self.quarantine.find(_named(entry)) if entry.kind == KIND else None
        if kept is None or not self._lets_in(entry, kept.entry):
            return
        self.take(kept.entry, entry)

    def waiting(self, entry: Entry) -> Entry | None:
        """The admission, come earlier, that lets this entry in; None when there is none."""
        said = (parse(one.token) for one in self.reading.job_entries(entry.job, KIND))
        return next((one for one in said if _named(one) == entry.digest and self._lets_in(one, entry)), None)

    def take(self, entry: Entry, admission: Entry) -> str:
        """Put it into the log; its receipt (JWS)."""
        receipt = self.log.append(entry)
        self.quarantine.let_go(entry.digest)
        self.trail.note("admitted", entry.job, admission.by, entry=entry.digest, of=entry.by, kind=entry.kind)
        self._photos(entry)
        return receipt

    def _lets_in(self, admission: Entry, entry: Entry) -> bool:
        person = self.accounts.by_id(admission.by)
        members = self.membership.members([entry.job]).get(entry.job, set())
        if person is None or admission.job != entry.job or not {admission.by, entry.by} <= members:
            return False
        return may(person.role, "admits", self.firms.areas_of(entry.job, person.id) is None)

    def _photos(self, entry: Entry) -> None:
        named = pictures(entry.payload)
        for sha256 in sorted(named & self.quarantine.photos(entry.job)) if named else []:
            photo = self.quarantine.photo(entry.job, sha256)
            if photo is not None:
                self.log.receive_photo(entry.job, sha256, photo.size, photo.type)
                self.quarantine.let_photo_go(entry.job, sha256)


def _named(admission: Entry) -> str:
    body = admission.payload["body"]
    assert isinstance(body, dict)  # its shape was checked when it was parsed
    return str(body["entry"])
