"""A whole server in memory but for its database and files, with people who can be given phones."""

from dataclasses import replace
from pathlib import Path
from typing import Any

from argon2 import PasswordHasher

from inspect_app.application import create_app
from inspect_app.settings import settings_from
from inspect_app.web.parts import Parts
from tests.begun import begun
from tests.phone import Phone, new_uuid
from tests.steady_clock import SteadyClock

# Argon2 all the same, but a hundredth of the work: hundreds of people sign in during the tests.
CHEAP = PasswordHasher(time_cost=1, memory_cost=64, parallelism=1)
PASSWORD = "a-password-for-tests"


class Office:
    """``told``: the jobs for which something new to report was noticed. ``first``: its tables are made at its own first
    start, not copied from one that was."""

    def __init__(self, data: Path, database_url: str = "", first: bool = False) -> None:
        if not (database_url or first):
            begun(data)
        environment = {"SEAMWALK_DATA": str(data), "SEAMWALK_DATABASE_URL": database_url}
        self.clock = SteadyClock()
        self.told: list[str] = []
        self.settings = settings_from(environment)
        self.app = create_app(self.settings, self.clock, self.told.append, CHEAP)

    def again(self) -> "Office":
        """The same data, opened by a server that starts anew."""
        other = object.__new__(Office)
        other.clock, other.told, other.settings = self.clock, [], replace(self.settings)
        other.app = create_app(self.settings, self.clock, other.told.append, CHEAP)
        return other

    @property
    def parts(self) -> Parts:
        return self.app.extensions["seamwalk"]

    def client(self) -> Any:
        return self.app.test_client()

    def add(self, login: str, role: str, *jobs: str) -> Any:
        with self.app.app_context(), self.parts.transactions.writing():
            person = self.parts.accounts.add(login, f"{login} (invented)", role, PASSWORD)
            for job in jobs:
                self.parts.membership.join(person.id, job)
        return person

    def phone(self, login: str, role: str, *jobs: str) -> Phone:
        """Somebody new, signed in, enrolled, with a token."""
        phone = Phone(self.client(), self.add(login, role, *jobs))
        assert phone.sign_in(PASSWORD).status_code == 200
        assert phone.enrol().status_code == 201
        assert phone.get_token().status_code == 200
        return phone

    def job(self, *members: Any, **body: Any) -> tuple[str, Phone]:
        """A new job, opened by an administrator who has a phone; ``members`` are person ids, ``body`` is what its entry
        says else than the sample."""
        job = new_uuid()
        chief = self.phone(f"chief-{job[-6:]}", "administrator")
        assert chief.send(chief.job(job, **body)).json["answers"][0]["status"] == "accepted"
        with self.app.app_context():
            for member in members:
                self.parts.membership.join(member, job)
        return job, chief

    def walk(self, phone: Phone, job: str, photo: str | None = None) -> list[str]:
        """The entries of a small signed walk: walk, station, a photo if given, sign-off."""
        walk, station = new_uuid(), new_uuid()
        tokens = [
            phone.entry("walk", job, walk),
            phone.entry("station", job, station, {"walk": walk}),
        ]
        if photo:
            seen = {"walk": walk, "station": station, "sha256": photo}
            tokens.append(phone.entry("photo", job, photo, seen))
        tokens.append(phone.entry("signoff", job, walk, {"walk": walk}))
        return tokens
