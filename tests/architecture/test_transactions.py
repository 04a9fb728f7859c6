"""Inside a transaction of the phone's database nothing else is awaited; and only bytes that may be lost are relaxed."""

import re

import pytest

from tests.architecture.transactions import bodies, faults
from tests.architecture.tree import files, source

PHONE = [name for name in files() if name.startswith("static/") and name.endswith(".js") and "vendor" not in name]
ACCESSOR = "static/storage/database.js"  # which runs them, and waits for their end
MAY_BE_LOST = {f"static/{name}.js" for name in ("storage/database", "storage/ballast", "storage/turn", "sync/lock")}


def test_a_transaction_awaits_only_requests_of_its_own() -> None:
    assert {name: found for name in PHONE if name != ACCESSOR and (found := faults(source(name)))} == {}
    assert sum(len(bodies(source(name))) for name in PHONE) > 50


def test_only_the_ballast_and_the_heartbeat_are_written_without_waiting_for_the_disk() -> None:
    assert {name for name in PHONE if "relaxed" in source(name)} <= MAY_BE_LOST


def test_nobody_but_the_accessor_holds_the_database() -> None:
    """A handle kept over anything else that is awaited may be dead when it is used."""
    assert {name for name in PHONE if ".transaction(" in source(name)} == {ACCESSOR}
    holders = {name for name in PHONE if re.search(r"import \{[^}]*\bconnection\b[^}]*\} from", source(name))}
    assert holders == {ACCESSOR}
    assert {name for name in PHONE if "openDB" in source(name)} == {"static/storage/connection.js"}


@pytest.mark.parametrize(
    "body",
    [
        "await fetch('/api')",
        "const token = await signed(payload); await tx.store.put(token)",
        "await tx.store.get(1); await new Promise((done) => setTimeout(done, 1))",
        "tx.store.put(await file.arrayBuffer())",
        "const hash = await crypto.subtle.digest('SHA-256', bytes)",
        "return readMeta(['full'])",
        "await Promise.all(rows.map((row) => verifiedReceipt(row)))",
    ],
)
def test_each_kind_of_other_wait_is_seen(body: str) -> None:
    assert faults(f"await withDb(['a'], 'readwrite', async (tx) => {{\n  {body}\n}})")
    assert faults(f"/** @param {{any}} tx */\nasync function used(tx, row) {{\n  {body}\n}}")


def test_a_transaction_hidden_in_another_name_is_seen() -> None:
    assert faults("withDb(['a'], 'readwrite', work)")
    assert faults("withDb(['a'], 'readwrite', (transaction) => transaction.store.get(1))")
    good = "for (const one of all) await tx.store.get(one)\n await mine(tx, 1)"
    assert faults(f"withDb(['a'], 'readonly', async (tx) => {{ {good} }})") == []
