"""What the record's own doubts add to a report's cautions, with the names and places that their words want."""

from typing import Any

# Told in a caution of their own, with what the report knows of them besides.
ELSEWHERE = ("fork", "gap", "unlinked")


def doubtful(record: dict[str, Any], people: dict[str, Any]) -> list[dict[str, Any]]:
    """``[{"code": "doubt", "facts": {"doubt", "n", "who" [names], "digests", …}}]`` of every doubt of the record
    that is not a flag (``flagged.py``), nor in ``ELSEWHERE``, nor versions of an answer (told where it is answered)."""
    flags = {flag.get("code") for flag in record.get("flags") or []}
    told = []
    for one in record.get("doubts") or []:
        facts = dict(one["facts"])
        if one["code"] in flags or one["code"] in ELSEWHERE or facts.get("kind") == "answer":
            continue
        area = record["areas"].get(facts.get("area")) or {}
        names = {name: thing.get("name") for kind in ("areas", "assemblies", "walks")
                 for name, thing in record[kind].items()}  # fmt: skip
        facts |= {"area": area.get("name")} if "area" in facts else {}
        facts |= {"name": names.get(facts["other"])} if "other" in facts else {}
        who = [(people.get(by) or {}).get("name") or by for by in one["by"]]
        digests = [entry["digest"] for entry in one["entries"]]
        facts |= {"doubt": one["code"], "n": facts.pop("kids", one["n"]), "who": who, "digests": digests}
        told.append({"code": "doubt", "facts": facts})
    return told


def forks(record: dict[str, Any], people: dict[str, Any]) -> list[dict[str, Any]]:
    """``fork`` once a key, from where its entries part, with the two that prove it; ``chain_broken``."""
    told = []
    owners = {kid: person.get("name") for person in people.values() for kid in person.get("kids") or []}
    for kid, chain in sorted((record.get("chains") or {}).items()):
        parted = chain.get("forks") or []
        if parted:
            both = sum(len(one["digests"]) for one in parted)
            told.append({"code": "fork", "facts": {"kid": kid, "seq": parted[0]["seq"], "both": both,
                         "who": owners.get(kid), "digests": parted[0]["digests"]}})  # fmt: skip
        if chain.get("orphans"):
            told.append({"code": "chain_broken", "facts": {"kid": kid, "who": owners.get(kid),
                         "count": len(chain["orphans"]), "digests": chain["orphans"]}})  # fmt: skip
    return told
