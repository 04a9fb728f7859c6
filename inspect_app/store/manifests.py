"""What each phone last said is still only on it, so that the office can list what has not arrived."""

import json
from collections.abc import Collection, Mapping, Sequence
from typing import Any, NamedTuple

from sqlalchemy import delete, insert, select

from inspect_app.clock import Clock, spell
from inspect_app.store.tables import ManifestRow
from inspect_app.store.transactions import Transactions

MOST = 10_000  # things of one key: more than a phone makes in months; some 2 MB, read with each look at the phones


class Manifest(NamedTuple):
    """The last word of one key: when it came, the oldest item's time as the phone tells it, and the items
    ``{"what": "entry"|"photo", "job", "name", "size", "kind"?, "at"?, "since"}``; ``since`` is when this server first
    heard that the key still has it."""

    kid: str
    received_at: str
    oldest: str | None
    items: list[dict[str, Any]]


class Manifests:
    """One manifest for each key; a new one takes the place of the one before, or stands beside it. Of more than
    ``MOST`` things those told last are kept."""

    def __init__(self, transactions: Transactions, clock: Clock) -> None:
        self.transactions, self.clock = transactions, clock

    def keep(self, kid: str, items: Sequence[Mapping[str, object]], oldest: str | None, more: bool = False) -> None:
        now = spell(self.clock())
        with self.transactions.writing() as session:
            before = {_key(one): one for told in self.of([kid]) for one in told.items}
            fresh = {_key(one): {**one, "since": before.get(_key(one), {}).get("since") or now} for one in items}
            known = {**before, **fresh} if more else fresh
            text = json.dumps(list(known.values())[-MOST:], separators=(",", ":"))
            session.execute(delete(ManifestRow).where(ManifestRow.kid == kid))
            row = {"kid": kid, "received_at": now, "oldest": oldest, "items": text}
            session.execute(insert(ManifestRow).values(**row))

    def of(self, kids: Collection[str]) -> list[Manifest]:
        """The manifests of these keys, in order of the key."""
        asked = select(ManifestRow.kid, ManifestRow.received_at, ManifestRow.oldest, ManifestRow.items).where(
            ManifestRow.kid.in_(kids)
        )
        with self.transactions.reading() as session:
            rows = session.execute(asked.order_by(ManifestRow.kid)).all()
        return [Manifest(row.kid, row.received_at, row.oldest, json.loads(row.items)) for row in rows]


def _key(item: Mapping[str, object]) -> tuple[object, ...]:
    return item["what"], item["job"], item["name"]
