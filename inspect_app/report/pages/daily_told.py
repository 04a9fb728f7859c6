"""What stands under each letter of a day but the checks: ``[(digest of the record that says it or None, markup)]``."""

from collections.abc import Callable
from typing import Any

from inspect_app.report.pages.daily_words import against_approval, at_hour, worded
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line

Told = list[tuple[str | None, str]]
FREE = 600  # letters of a free text beside others; the entry is enclosed whole


def _crew(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    parties = [line(party.get("name"), 80) for party in page.contents["job"]["parties"] or []]
    if parties:
        told.append((None, page.say("day_parties", names=", ".join(parties))))
    for row in one["said"]:
        count = row.get("head_count")
        heads = page.say("people", count=count) if count is not None else page.say("day_no_heads")
        told.append((row["digest"], f"{line(row.get('crew') or '—', 60)} · {heads}"))
    if one["known"]:
        told.append((None, page.say("day_areas", names=", ".join(page.area(area) for area in one["known"]["areas"]))))
    return told


def _plant(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for said in one["said"]:
        for row in said["equipment"]:
            parts = [worded(page, "equipment", row["what"])]
            if row["operator"]:
                parts.append(page.say("day_operator", name=line(row["operator"], 60)))
            if row["setting"]:
                parts.append(page.say("day_setting", setting=line(row["setting"], 60)))
            if row["hours"]:
                parts.append(page.say("day_hours", hours=line(row["hours"], 20)))
            told.append((said["digest"], " · ".join(parts)))
    return told


def _work(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = [
        (
            None,
            page.say(
                f"day_set_{row['by']}",
                area=page.area(row["area"]),
                low=row["from"],
                high=row["to"],
                count=row["to"] - row["from"] + 1,
            ),
        )
        for row in one["known"].get("work_done", [])
    ]
    return told + [(row["digest"], line(row["work"], FREE) + page.recorded()) for row in one["said"] if row.get("work")]


def _materials(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for said in one["said"]:
        for row in said["materials"]:
            gauge = f"{row['gauge']} {row.get('gauge_system') or ''}".strip() if row.get("gauge") else ""
            parts = [
                f"<b>{worded(page, 'what', row['what'])}</b>", line(row["quantity"], 60), line(gauge, 40),
                line(row.get("coating") or "", 60),
                page.say("day_coil", name=line(row.get("coil") or row.get("lot"), 60)) if row.get("coil")
                or row.get("lot") else "",
                page.say("day_maker", name=line(row["maker"], 60)) if row.get("maker") else "",
                worded(page, "accepted", row["accepted"]), worded(page, "stored", row["stored"]),
            ]  # fmt: skip
            text = " · ".join(part for part in parts if part)
            told.append((said["digest"], " ".join([f"{text}.", *against_approval(page, row)])))
    return told


def _free(name: str) -> Callable[[Page, dict[str, Any], dict[str, Any]], Told]:
    def told(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
        return [(row["digest"], _recorded(page, "text", row[name])) for row in one["said"]]

    return told


def _safety(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for row in one["said"]:
        parts = [_recorded(page, "safety", row["safety"])] if row.get("safety") else []
        if row.get("tied_down"):
            parts.append(page.say("day_tied", what=worded(page, "tied", row["tied_down"])))
        told.append((row["digest"], " · ".join(parts)))
    return told


def _instructions(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for said in one["said"]:
        for row in said["instructions"]:
            text = _recorded(page, "text", row["said"])
            by = line(row["by"], 80)
            told.append((said["digest"], page.say("day_by", name=by, said=text) if by else text))
    return told


def _statement(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for row in one["said"]:
        who = f"{line(row.get('name'), 60)}, {page.say('role.' + str(row.get('role')))}"
        text = f"“{_statement_text(page, row.get('statement'))}” {who}, {page.voice.moment(row['at'])}"
        if row.get("objection"):
            text += f" <b>▲ {page.say('day_' + row['objection'])}</b>"
        told.append((row["digest"], text))
    return told


def _statement_text(page: Page, said: Any) -> str:
    """What was signed, never translated: it says in which language it stands."""
    keys = ("day_record.statement", "day_record.statement.no_work")
    known = next((found for key in keys if (found := page.voice.language_of(key, said))), None)
    same = known in (None, page.voice.language)
    return line(said, FREE) + ("" if same else page.recorded(language=known))


def _weather(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for said in one["said"]:
        rows = [f"{at_hour(row['at'])} {_sky(page, row)}" for row in said["weather"]]
        told.append((said["digest"], "; ".join(rows)))
    metal = [f"{at_hour(row['at'])} {page.voice.quantity(row['temperature'])}" for row in one["known"].get("metal", [])]
    if metal:
        told.append((None, page.say("day_metal", told="; ".join(metal[:24]) + ("…" if len(metal) > 24 else ""))))
    return told


def _sky(page: Page, row: dict[str, Any]) -> str:
    parts = [page.say(f"sky.{row['sky']}") if row["sky"] else "",
             page.say("wind_is", wind=page.say(f"wind.{row['wind']}")) if row["wind"] else "",
             page.say("air_is", amount=page.voice.quantity(row["air"])) if row.get("air") else ""]  # fmt: skip
    return ", ".join(line(part, 80) for part in parts if part)


def _delays(page: Page, day: dict[str, Any], one: dict[str, Any]) -> Told:
    told: Told = []
    for said in one["said"]:
        for row in said["delays"]:
            hours = page.say("day_hours", hours=line(row["hours"], 20)) if row["hours"] else ""
            told.append((said["digest"], " · ".join(part for part in (worded(page, "why", row["why"]), hours) if part)))
    return told


def _recorded(page: Page, group: str, text: Any) -> str:
    """Typed words say in which language they stand; what was pressed is said in the report's."""
    said = worded(page, group, text)
    return said if said != line(text, FREE) else said + page.recorded()


BY_ITEM: dict[str, Callable[[Page, dict[str, Any], dict[str, Any]], Told]] = {
    "crew_and_areas": _crew, "plant": _plant, "work": _work, "materials": _materials,
    "submittals": _free("submittals"), "offsite": _free("offsite"), "safety": _safety,
    "instructions": _instructions, "statement": _statement, "weather": _weather, "delays": _delays,
}  # fmt: skip
