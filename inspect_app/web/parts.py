"""The app's parts, as a route or a command asks for them; the composition root alone builds them."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import cast

from flask import current_app

from inspect_app.checklist.load import Definitions
from inspect_app.clock import Clock
from inspect_app.intake.batch import Batches
from inspect_app.intake.completion import Completion
from inspect_app.people.accounts import Accounts
from inspect_app.people.delivery import Delivery
from inspect_app.people.devices import Devices
from inspect_app.people.membership import Membership
from inspect_app.people.nonces import Nonces
from inspect_app.people.passkeys import Passkeys
from inspect_app.people.tickets import Tickets
from inspect_app.people.tries import Tries
from inspect_app.settings import Settings
from inspect_app.store.definitions import DefinitionArchive
from inspect_app.store.log import Log
from inspect_app.store.log_reading import LogReading
from inspect_app.store.manifests import Manifests
from inspect_app.store.quarantine import Quarantine
from inspect_app.store.records import Records
from inspect_app.store.server_key import ServerKey
from inspect_app.store.statements import Statements
from inspect_app.store.transactions import Transactions
from inspect_app.store.vault import Vault
from inspect_app.words import Words


@dataclass(frozen=True)
class Parts:
    """Everything a route or a command may ask for, as ``app.extensions["seamwalk"]``."""

    settings: Settings
    clock: Clock
    new_id: Callable[[], str]
    words: Words
    definitions: Definitions
    archive: DefinitionArchive
    server_key: ServerKey
    transactions: Transactions
    statements: Statements
    log: Log
    reading: LogReading
    records: Records
    vault: Vault
    quarantine: Quarantine
    manifests: Manifests
    accounts: Accounts
    membership: Membership
    devices: Devices
    nonces: Nonces
    delivery: Delivery
    tries: Tries
    tickets: Tickets
    passkeys: Passkeys
    batches: Batches
    completion: Completion
    after_intake: Callable[[str], None]


def parts() -> Parts:
    """Those of the app in hand."""
    return cast(Parts, current_app.extensions["seamwalk"])
