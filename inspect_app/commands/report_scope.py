"""What ``seamwalk report`` is asked to speak of, out of its arguments; who names nothing is told what there is."""

import argparse
import sys
from typing import Any

from inspect_app.commands.calc_input import quantity
from inspect_app.commands.visible import visible
from inspect_app.errors import BadInput
from inspect_app.record.scope import FIELDS, narrowed, scope_of
from inspect_app.rules.refused import Refused

LISTED = 30  # walks or audits named to who named none: the newest; areas by name
LENGTHS = ("from_low_end", "radius")


def add_to(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--kind", choices=tuple(FIELDS), default="closeout", help="what it speaks of (closeout)")
    parser.add_argument("--walk", help="of a walk: its id; of an only walk it may be left out")
    parser.add_argument("--lot", help="of an audit: the id of its lot; of an only audit it may be left out")
    parser.add_argument("--area", help="of a survey: the area, by its id or name")
    parser.add_argument("--panel", type=int, help="of a survey: the panel's number")
    parser.add_argument("--from-low-end", metavar="LENGTH", help='of a survey: "12.5 ft" up from the panel\'s low end')
    parser.add_argument("--radius", metavar="LENGTH", help='of a survey: "6 ft" around it')


def scope_in(args: argparse.Namespace, record: dict[str, Any], say: Any) -> dict[str, Any]:
    """The scope asked for. ``say(key)``: words. Raises ``BadInput`` for one that names nothing here."""
    given = {name: getattr(args, name) for name in ("walk", "lot", "area", "panel")}
    wanted = FIELDS[args.kind]
    try:
        for name in LENGTHS:
            text = getattr(args, name)
            given[name] = quantity(text, name, "length") if text and name in wanted else None
        there = _there(args.kind, record)
        if given["area"] is not None:
            given["area"] = _area(given["area"], record)
        for name in ("walk", "lot"):
            if name in wanted and given[name] is None and len(there) == 1:
                given[name] = there[0][0]
        scope = scope_of(args.kind, given)
        narrowed(record, scope)
    except Refused as refused:
        if args.kind in ("walk", "audit") or refused.field == "area":
            _tell(args.kind, record, say)
        if refused.value is None:
            raise BadInput("scope_not_named", refused.field.replace("_", "-"), "—") from None
        raise BadInput(refused.code, refused.field, refused.value) from None
    return scope


def _area(text: str, record: dict[str, Any]) -> str:
    named = [key for key, area in record["areas"].items() if area.get("name") == text]
    return named[0] if len(named) == 1 else text


def _there(kind: str, record: dict[str, Any]) -> list[tuple[str, str, str]]:
    """``(id, when, by whom)`` of each walk or audit, the oldest first; of a survey ``(id, name, "")`` of each area."""
    if kind == "survey":
        rows = [(key, str(area.get("name") or ""), "") for key, area in record["areas"].items()]
        return sorted(rows, key=lambda row: (row[1], row[0]))
    if kind == "walk":
        rows = [(key, str(walk["at"])[:16].replace("T", " "), str(walk.get("crew") or ""))
                for key, walk in record["walks"].items()]  # fmt: skip
    else:
        rows = [(key, str(lot["day"]), str(lot["crew"])) for key, lot in record["lots"].items()
                if lot["purpose"] == "audit" and kind == "audit"]  # fmt: skip
    return sorted(rows, key=lambda row: (row[1], row[0]))


def _tell(kind: str, record: dict[str, Any], say: Any) -> None:
    rows = _there(kind, record)
    print(say(f"report.command.{kind}s" if rows else f"report.command.no_{kind}s"), file=sys.stderr)
    for key, first, second in rows[-LISTED:]:
        print(f"  {key}  {visible(first)}  {visible(second)}".rstrip(), file=sys.stderr)
