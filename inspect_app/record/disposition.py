"""What the technical lead or the engineer chose for a lot that was not accepted."""

from inspect_app.record.authority import objection

STRICTEST_FIRST = ("replace", "open", "accept")


def dispositions(grouped: dict, people: dict, flags: list) -> dict:
    """``{lot id: disposition}`` from grouped versions (``heads.versions``): the body plus ``digest, by, at, clock,
    heads, stands``.

    Of several that nothing supersedes, one by somebody who may comes before all others, and of those the strictest
    (replace, open, accept). ``stands``: who chose it may, and an acceptance names its document, by its photo or its
    reference. An acceptance that encloses none is flagged ``accept_without_document``.
    """
    found = {}
    for lot_id in sorted(grouped):
        ranked = []
        for entry in grouped[lot_id]["heads"]:
            body = entry["payload"]["body"]
            accepts = body["choice"] == "accept"
            bare = accepts and not body.get("document") and not (body.get("reference") or "").strip()
            if accepts and not body.get("document"):
                facts = {"other": lot_id}
                flags.append({"digest": entry["digest"], "code": "accept_without_document", "facts": facts})
            may = not objection(entry, people)
            ranked.append((not may, STRICTEST_FIRST.index(body["choice"]), bare, entry["digest"], entry))
        _, _, bare, digest, entry = min(ranked)
        payload = entry["payload"]
        disposition = dict(payload["body"])
        disposition.update({
            "digest": digest, "by": payload["by"], "at": payload["at"], "clock": payload["clock"],
            "heads": [one["digest"] for one in grouped[lot_id]["heads"]],
            "stands": not bare and not objection(entry, people),
        })  # fmt: skip
        found[lot_id] = disposition
    return found
