"""``seamwalk user``: accounts, the jobs they belong to, and the keys of their phones."""

import argparse
import os
import sys
from typing import TYPE_CHECKING, Any

from inspect_app.application import create_app
from inspect_app.entry.refusal import Refused
from inspect_app.entry.uuid7 import version7
from inspect_app.errors import BadInput, NotFound
from inspect_app.people.passwords import made_up
from inspect_app.people.roles import ROLES
from inspect_app.settings import settings_from

if TYPE_CHECKING:
    from inspect_app.people.accounts import Person
    from inspect_app.web.parts import Parts


def add_to(subparsers: Any) -> None:
    parser = subparsers.add_parser("user", help="people, their jobs and their phones' keys")
    actions = parser.add_subparsers(dest="action", required=True, metavar="ACTION")
    add = actions.add_parser("add", help="add a person")
    add.add_argument("login")
    add.add_argument("--name", required=True)
    add.add_argument("--role", required=True, help=", ".join(ROLES))
    add.add_argument("--job", action="append", default=[], help="a job id to belong to; may be given again")
    add.add_argument("--password-stdin", action="store_true", help="read the password from standard input")
    join = actions.add_parser("join", help="let a person belong to a job")
    join.add_argument("login")
    join.add_argument("job")
    revoke = actions.add_parser("revoke", help="end a phone's key; what it sends later is kept apart")
    revoke.add_argument("kid")
    login = actions.add_parser("login", help="give an account, named by its id, a login and a new password")
    login.add_argument("id")
    login.add_argument("login")
    actions.add_parser("list", help="everybody, their jobs and keys")


def run(args: argparse.Namespace) -> int:
    app = create_app(settings_from(os.environ))
    with app.app_context():
        ACTIONS[args.action](app.extensions["seamwalk"], args)
    return 0


def add(parts: "Parts", args: argparse.Namespace) -> None:
    """Print the made-up password, once, when none was given."""
    jobs = [job_id(job) for job in args.job]
    password = sys.stdin.readline().rstrip("\r\n") if args.password_stdin else made_up()
    with parts.transactions.writing():
        person = parts.accounts.add(args.login, args.name, args.role, password)
        for job in jobs:
            parts.membership.join(person.id, job)
    print(f"added {person.login} ({person.role}), id {person.id}")
    if not args.password_stdin:
        print(f"password: {password}")


def join(parts: "Parts", args: argparse.Namespace) -> None:
    person = known(parts, args.login)
    new = parts.membership.join(person.id, job_id(args.job))
    print(f"{person.login} {'now belongs' if new else 'belonged already'} to {args.job}")


def revoke(parts: "Parts", args: argparse.Namespace) -> None:
    parts.devices.revoke(args.kid, "server")
    print(f"revoked {args.kid}; what it signs from now on is kept apart")


def login(parts: "Parts", args: argparse.Namespace) -> None:
    """For an account that a server, set back to a backup, knew again by its phone's key alone."""
    password = made_up()
    person = parts.accounts.give_login(args.id, args.login, password)
    print(f"{person.id} signs in as {person.login}\npassword: {password}")


def everybody(parts: "Parts", args: argparse.Namespace) -> None:
    for person in parts.accounts.everybody():
        print(f"{person.login}  {person.role}  {person.name}  {person.id}")
        for job in parts.membership.jobs_of(person.id):
            print(f"  job {job}  {parts.records.name(job)}")
        for device in parts.devices.of(person.id):
            print(f"  key {device.kid}  {device.device}{'  revoked' if device.revoked else ''}")


ACTIONS = {"add": add, "join": join, "revoke": revoke, "login": login, "list": everybody}


def known(parts: "Parts", login: str) -> "Person":
    person = parts.accounts.by_login(login)
    if person is None:
        raise NotFound("login_unknown", "login", login)
    return person


def job_id(text: str) -> str:
    """A job's id. Raises ``BadInput``."""
    try:
        version7(text, "job")
    except Refused:
        raise BadInput("bad_job", "job", text) from None
    return text
