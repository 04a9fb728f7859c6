"""The approved assembly, line by line, against what was looked at."""

from typing import Any

from inspect_app.report.pages.cells import Cells
from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Heading, Row, room, space, together
from inspect_app.report.pages.text import line

WORDED = ("seam", "attachment")
SHARES = (0.24, 0.46, 0.3)


def assembly_section(page: Page, number: str) -> list[Any]:
    """One part for each assembly of the job."""
    story: list[Any] = [Heading(page.say("chapter.assembly"), "assembly", number=number)]
    story.append(Row("", Paragraph(page.say("assembly_says") + page.recorded(), SMALL), 4))
    if not page.contents["assemblies"]:
        return [*story, Row("", Paragraph(page.say("no_assembly"), BODY))]
    for at, assembly in enumerate(page.contents["assemblies"]):
        head, tables = _assembly(page, assembly, at)
        story = [*([] if at else [room(260)]), *story, *([room(180)] if at else []), together(head), *tables]
    return story


def _assembly(page: Page, assembly: dict[str, Any], at: int) -> tuple[list[Any], list[Any]]:
    """Its head, and its tables: what was approved, then what was judged against it by eye."""
    name = line(assembly["name"])
    story: list[Any] = [Heading(name, f"assembly-{at + 1}", 1, name)]
    areas = ", ".join(line(name, 60) for name in assembly["areas"]) or page.say("no_area")
    story.append(Row(page.say("on_areas"), Paragraph(areas, BODY)))
    approval = assembly["approval"]
    dates = page.say(
        "approval_dates",
        issued=page.voice.day(approval["issued"]),
        expires=page.voice.day(approval["expires"]),
    )
    story.append(Row(page.say("approval"), Paragraph(f"{line(approval['reference'])} · {dates}", BODY)))
    rows = [[page.say(f"assembly.{one['field']}"), _value(page, one), page.tally(one["found"])]
            for one in assembly["lines"]]  # fmt: skip
    for zone in assembly["zones"][:12]:
        parts = [page.say("spacing_at", amount=page.voice.quantity(zone.get("spacing")))]
        if zone.get("pressure"):
            parts.append(page.say("tested_for", amount=page.voice.quantity(zone["pressure"])))
        rows.append([page.say("zone_label", zone=page.zone(zone.get("name"))), "; ".join(parts),
                     page.tally(zone["found"])])  # fmt: skip
    tables = [space(4), Cells([page.say("assembly_line"), page.say("approved"), page.say("found")], rows, SHARES)]
    if assembly["others"]:
        asked = [[line(page.voice.both(one["question"], str(one["item"])), 200), page.tally(one["found"])]
                 for one in assembly["others"][:40]]  # fmt: skip
        tables += [space(3), Cells([page.say("by_eye"), page.say("found")], asked, (1 - SHARES[2], SHARES[2]))]
    return story, tables


def _value(page: Page, one: dict[str, Any]) -> str:
    value, field = one["value"], one["field"]
    if field == "clip_seams" and isinstance(value, list):
        return ", ".join(page.say(f"seam.{each}") for each in value[:12])
    shown = page.say(f"{field}.{value}") if field in WORDED else page.voice.quantity(value)
    return f"{shown} <font color='#646b70'>{line(one['note'], 90)}</font>" if one["note"] else shown
