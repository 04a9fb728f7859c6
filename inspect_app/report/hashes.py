"""What this report seals: the head of the log, the head of every key's chain, and the digests of what it
used."""

from typing import Any


def hashes(record: dict[str, Any], people: dict[str, Any], definitions: dict[str, Any], log: dict[str, Any],
           ) -> dict[str, Any]:  # fmt: skip
    """``log``: ``head_seq``, ``head_receipt``, ``server_kid``, ``fingerprint`` and ``keys`` {kid: count,
    head,
    person}. A chain's own count stands beside the log's, so that a difference shows."""
    keys = []
    for kid in sorted({*(log.get("keys") or {}), *(record.get("chains") or {})}):
        sealed, chain = (log.get("keys") or {}).get(kid) or {}, (record.get("chains") or {}).get(kid) or {}
        person = people.get(str(sealed.get("person"))) or _owner(people, kid)
        keys.append(
            {
                "kid": kid,
                "person": person.get("name"),
                "count": sealed.get("count", chain.get("count")),
                "head": sealed.get("head", chain.get("head")),
                "gaps": chain.get("gaps") or [],
                "forks": len(chain.get("forks") or []),
                "broken": len(chain.get("orphans") or []),
            }
        )
    return {
        "head_seq": log.get("head_seq"),
        "head_receipt": log.get("head_receipt"),
        "server_kid": log.get("server_kid"),
        "fingerprint": log.get("fingerprint"),
        "keys": keys,
        "definitions": [
            {
                "id": definitions[digest].get("id"),
                "version": definitions[digest].get("version"),
                "digest": digest,
            }
            for digest in sorted(definitions)
        ],
    }


def _owner(people: dict[str, Any], kid: str) -> dict[str, Any]:
    for identity in sorted(people):
        if kid in (people[identity].get("kids") or []):
            return dict(people[identity])
    return {}
