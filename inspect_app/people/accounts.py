"""Accounts: who can sign in."""

from collections.abc import Callable
from typing import NamedTuple

from sqlalchemy import insert, select, update

from inspect_app.clock import Clock, spell
from inspect_app.errors import BadInput, Conflict, NotFound
from inspect_app.people.passwords import Passwords, made_up
from inspect_app.people.roles import role as known_role
from inspect_app.store.tables import PersonRow
from inspect_app.store.transactions import Transactions

LONGEST = 100


class Person(NamedTuple):
    """An account without its secret."""

    id: str
    login: str
    name: str
    role: str


_COLUMNS = (PersonRow.id, PersonRow.login, PersonRow.name, PersonRow.role)


class Accounts:
    """All accounts. ``new_id()`` gives the id of a new person."""

    def __init__(
        self, transactions: Transactions, clock: Clock, new_id: Callable[[], str], passwords: Passwords
    ) -> None:
        self.transactions, self.clock, self.new_id, self.passwords = transactions, clock, new_id, passwords

    def add(self, login: str, name: str, role: str, password: str) -> Person:
        """A new account. Raises ``BadInput`` (login, name, role, password), ``Conflict`` for a login that
        is taken."""
        person = Person(self.new_id(), login_of(login), _text(name, "name"), known_role(role))
        row = {**person._asdict(), "password": self.passwords.hashed(password), "added_at": spell(self.clock())}
        with self.transactions.writing() as session:
            if self.by_login(person.login):
                raise Conflict("login_taken", "login", person.login)
            session.execute(insert(PersonRow).values(**row))
        return person

    def again(self, id: str, name: str, role: str) -> Person:
        """The account with this id; made anew where a server that was set back has forgotten it. Until it is given a
        login of its own, nobody signs in to it."""
        with self.transactions.writing() as session:
            known = self.by_id(id)
            if known is None:
                nobody = self.passwords.hashed(made_up() + made_up())
                login = id if self.by_login(id) is None else f"{id}-{made_up()}"  # anybody may have taken it
                known = Person(id, login, name, known_role(role))
                session.execute(insert(PersonRow).values(
                    **known._asdict(), password=nobody, added_at=spell(self.clock())))  # fmt: skip
        return known

    def give_login(self, id: str, login: str, password: str) -> Person:
        """A new login and password for an account. Raises ``NotFound``, ``BadInput``, ``Conflict``."""
        with self.transactions.writing() as session:
            known, wanted = self.by_id(id), login_of(login)
            if known is None:
                raise NotFound("person_unknown", "id", id)
            if (holder := self.by_login(wanted)) and holder.id != id:
                raise Conflict("login_taken", "login", wanted)
            row = {"login": wanted, "password": self.passwords.hashed(password)}
            session.execute(update(PersonRow).where(PersonRow.id == id).values(**row))
        return known._replace(login=wanted)

    def signing_in(self, login: str, password: str) -> Person | None:
        """The person with this login and password; None, after the same time, for any other pair."""
        with self.transactions.reading() as session:
            asked = select(*_COLUMNS, PersonRow.password).where(PersonRow.login == _folded(login))
            row = session.execute(asked).first()
        good = self.passwords.matches(password, row.password if row else None)
        return Person(row.id, row.login, row.name, row.role) if row and good else None

    def by_login(self, login: str) -> Person | None:
        return self._one(PersonRow.login == _folded(login))

    def by_id(self, person: str) -> Person | None:
        return self._one(PersonRow.id == person)

    def sign_ins_from(self, person: str) -> str | None:
        """Since when a sign-in of theirs counts; None: always."""
        with self.transactions.reading() as session:
            return session.scalar(select(PersonRow.sign_ins_from).where(PersonRow.id == person))

    def everybody(self) -> list[Person]:
        """All accounts, in order of their login."""
        with self.transactions.reading() as session:
            return sorted((Person(*row) for row in session.execute(select(*_COLUMNS))), key=lambda p: p.login)

    def _one(self, condition: object) -> Person | None:
        with self.transactions.reading() as session:
            row = session.execute(select(*_COLUMNS).where(condition)).first()  # type: ignore[arg-type]
        return Person(*row) if row else None


def login_of(text: str) -> str:
    """A login as it is kept: lower case, no spaces or control characters in it. Raises ``BadInput``."""
    login = _folded(_text(text, "login"))
    if not login.isprintable() or any(sign.isspace() for sign in login):
        raise BadInput("bad_login", "login", text)
    return login


def _folded(login: str) -> str:
    return login.strip().casefold()


def _text(text: str, field: str) -> str:
    stripped = text.strip()
    if not 0 < len(stripped) <= LONGEST or not stripped.isprintable():
        raise BadInput("bad_text", field, text)
    return stripped
