"""What the parts of a definition mean together: combinations that would mislead whoever is on the roof."""

from collections.abc import Iterator
from typing import Any

from inspect_app.checklist.rule_use import Fault, Rules, rule_faults
from inspect_app.rules.unit import dimension_of

INSTRUMENTS: dict[str, tuple[str | None, ...]] = {
    "judge": (None, "choice"),
    "note": (None,),
    "measure": ("slot_taps", "number", "tab", "feeler", "micrometer", "inclinometer", "gaps"),
    "count": ("count",),
    "compute": (None,),
}
# What each instrument's reading is entered in; None: in whatever dimension the item's unit has.
WITH_UNIT = {
    "number": None, "tab": "length", "feeler": "length", "micrometer": "length", "inclinometer": "slope",
    "gaps": "length",
}  # fmt: skip
# These rules work something out and judge nothing; a window judges only a screw, which is what ``slot`` is for.
WITHOUT_VERDICT = ("movement", "window", "pull_out", "pull_over", "withdrawal", "clip_force", "edge_width",
                   "centred")  # fmt: skip


def definition_faults(data: dict[str, Any]) -> Iterator[Fault]:
    """Faults between items or causes, and between items and the definition; paths from the top of the file."""
    codes = [one["code"] for one in data.get("causes", [])]
    for n, code in enumerate(codes):
        if code in codes[:n]:
            yield ("causes", n, "code"), code, "repeated_value", {}
    first: dict[str, int] = {}
    for n, item in enumerate(data["items"]):
        if item["id"] in first:
            yield ("items", n, "id"), item["id"], "repeated_item", {"n": first[item["id"]]}
        first.setdefault(item["id"], n)
        wide = data["applies"].get("attachment")
        own = item["applies"].get("attachment") or ()
        outside = [one for one in own if wide and one not in wide]
        if outside:
            place = ("items", n, "applies", "attachment")
            yield place, outside[0], "applies_outside", {"allowed": ", ".join(wide)}


def item_faults(item: dict[str, Any], per: str, rules: Rules) -> Iterator[Fault]:
    """Faults of one item; paths from the top of the item."""
    yield from _instrument(item)
    yield from _evidence(item)
    yield from _severity(item)
    if item["rule"]:
        yield from rule_faults(item, per, rules)


def _instrument(item: dict[str, Any]) -> Iterator[Fault]:
    kind, instrument = item["kind"], item["instrument"]
    rule = (item["rule"] or {}).get("name")
    if instrument not in INSTRUMENTS[kind]:
        allowed = ", ".join(one or "null" for one in INSTRUMENTS[kind])
        yield ("instrument",), instrument, "instrument_for_kind", {"kind": kind, "allowed": allowed}
    if instrument == "slot_taps" and not (rule or "").startswith("slot@"):
        yield ("instrument",), instrument, "taps_without_slot", {}
    if kind == "compute" and not rule:
        yield ("rule",), None, "rule_needed", {"kind": kind}
    if rule and kind in ("judge", "note"):
        yield ("rule",), rule, "rule_for_kind", {"kind": kind}
    needs_unit = instrument in WITH_UNIT
    unit: dict[str, str] = item.get("unit") or {}
    if needs_unit and not unit:
        yield ("unit",), None, "unit_missing", {"instrument": instrument}
    if unit and not needs_unit:
        yield ("unit",), ", ".join(unit.values()), "unit_unused", {"instrument": instrument or "null"}
    measured = {dimension_of(one) for one in unit.values()}
    own = WITH_UNIT.get(instrument)
    if len(measured) > 1 or (own and measured and measured != {own}):
        yield ("unit",), ", ".join(unit.values()), "unit_mixed", {}
    if item.get("step") and not unit:
        yield ("step",), ", ".join(item["step"].values()), "step_unused", {}


def _evidence(item: dict[str, Any]) -> Iterator[Fault]:
    if item["severity"] == "critical" and item["photo"] == "optional":
        yield ("photo",), item["photo"], "critical_photo", {}
    if item["severity"] == "critical" and item["basis_kind"] == "common_practice":
        yield ("severity",), item["severity"], "critical_common_practice", {}
    if item["severity"] == "record" and item["photo"] == "on_fail":
        yield ("photo",), item["photo"], "photo_never", {}
    quick = item["kind"] == "judge" and item["severity"] != "critical" and item["photo"] != "required"
    if item["quick"] and not quick:
        yield ("quick",), item["quick"], "not_quick", {}


def _severity(item: dict[str, Any]) -> Iterator[Fault]:
    """What is judged can fail and needs a weight; what is only written down cannot."""
    rule = (item["rule"] or {}).get("name", "")
    judged = item["kind"] == "judge" or (bool(rule) and rule.split("@")[0] not in WITHOUT_VERDICT)
    if item["kind"] != "note" and judged and item["severity"] == "record":
        yield ("severity",), item["severity"], "record_judged", {}
    if not judged and item["severity"] != "record":
        yield ("severity",), item["severity"], "unjudged", {"kind": item["kind"]}
    sources = list((item["rule"] or {}).get("inputs", {}).values())
    looks = any(isinstance(one, str) and one.startswith("reading.") for one in sources)
    if rule and judged and item["kind"] != "compute" and not looks:
        yield ("rule", "inputs"), None, "reading_unused", {}
