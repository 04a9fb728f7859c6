"""The approved assembly, line by line, against what was looked at."""

from typing import Any

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Heading, Row, Trio, space, together
from inspect_app.report.pages.text import line

WORDED = ("seam", "attachment")


def assembly_section(page: Page, number: str) -> list[Any]:
    """One part for each assembly of the job."""
    story: list[Any] = [Heading(page.say("chapter.assembly"), "assembly", number=number)]
    story.append(Row("", Paragraph(page.say("assembly_says") + page.recorded(), SMALL), 4))
    parts = [_assembly(page, assembly, at) for at, assembly in enumerate(page.contents["assemblies"])]
    if not parts:
        return [*story, Row("", Paragraph(page.say("no_assembly"), BODY))]
    # One sheet a page where it fits: its columns have their heads over them.
    return [together([*story, *parts[0]]), *map(together, parts[1:])]


def _assembly(page: Page, assembly: dict[str, Any], at: int) -> list[Any]:
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
    story += [space(5), Trio("", page.say("approved"), page.say("found"), SMALL, True)]
    for one in assembly["lines"]:
        story.append(Trio(page.say(f"assembly.{one['field']}"), _value(page, one), page.tally(one["found"])))
    for zone in assembly["zones"][:12]:
        parts = [page.say("spacing_at", amount=page.voice.quantity(zone.get("spacing")))]
        if zone.get("pressure"):
            parts.append(page.say("tested_for", amount=page.voice.quantity(zone["pressure"])))
        label = page.say("zone_label", zone=page.zone(zone.get("name")))
        found = page.tally(zone["found"])
        story.append(Trio(label, "; ".join(parts), found))
    if assembly["others"]:
        story.append(space(5))
        for one in assembly["others"][:40]:
            question = line(page.voice.both(one["question"], str(one["item"])), 200)
            story.append(Trio(page.say("by_eye"), question, page.tally(one["found"])))
    return story


def _value(page: Page, one: dict[str, Any]) -> str:
    value, field = one["value"], one["field"]
    if field == "clip_seams" and isinstance(value, list):
        return ", ".join(page.say(f"seam.{each}") for each in value[:12])
    shown = page.say(f"{field}.{value}") if field in WORDED else page.voice.quantity(value)
    return f"{shown} <font color='#646b70'>{line(one['note'], 90)}</font>" if one["note"] else shown
