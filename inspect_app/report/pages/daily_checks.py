"""Under a day's letter d: fit checks, walks by phase with what came of them, holds, findings and what was done."""

from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line


def checks(page: Page, known: dict[str, Any]) -> list[tuple[str | None, str]]:
    """``[(None, markup)]``: nobody writes this down, the record knows it. UFGS 01 45 00 wants the phase of each."""
    told = [
        page.say("day_fit", area=page.area(one["area"]), day=page.voice.day(one["day"]),
                 result=page.voice.result(one["result"]))
        for one in known.get("fits", [])
    ]  # fmt: skip
    told += [_walk(page, one) for one in known.get("walks", [])]
    told += _holds(page, known.get("holds", []))
    numbers = {one["id"]: one["n"] for one in page.contents["findings"] if "n" in one}
    if known.get("findings"):
        last = len(numbers) + 1  # what has no number stands behind what has
        found = [_finding(page, numbers, one) for one in
                 sorted(known["findings"], key=lambda one: numbers.get(one, last))]  # fmt: skip
        told.append(page.say("day_findings", findings=", ".join(dict.fromkeys(found))))
    if known.get("actions"):
        acts = [f"{_finding(page, numbers, one['finding'])} {page.say('day_act.' + one['kind'])}"
                for one in known["actions"]]  # fmt: skip
        told.append(page.say("day_actions", acts="; ".join(acts)))
    return [(None, one) for one in told]


def _walk(page: Page, one: dict[str, Any]) -> str:
    numbers = {walk["id"]: walk["n"] for walk in page.contents["days"]}
    titles = {walk["id"]: walk["definition"]["title"] for walk in page.contents["days"]}
    n = numbers.get(one["walk"])
    name = f"{n}, {line(page.voice.both(titles[one['walk']]), 60)}" if n else line(one["walk"], 40)
    link = f'<link destination="#walk-{n}" color="#8a3f17">{name}</link>' if n else name
    phases = ", ".join(page.say(f"day_phase.{phase}") for phase in one["phases"] or ["none"])
    tally = page.tally([{"result": name, "count": count} for name, count in one["results"].items()], "not_looked") + "."
    says = page.say("day_walk", walk=link, phases=phases, tally=tally)
    return says if one["signed"] else f"{says} {page.say('day_not_signed')}"


def _holds(page: Page, holds: list[dict[str, Any]]) -> list[str]:
    told = [
        page.say("day_hold", panel=one["panel"], why=page.say(f"hold.why.{one['why']}"),
                 state=page.say(f"day_hold_state.{one['state']}"))
        for one in holds
    ]  # fmt: skip
    return [page.say("day_holds", holds="; ".join(told))] if told else []


def _finding(page: Page, numbers: dict[str, int], identity: str) -> str:
    n = numbers.get(identity)
    return page.to("finding", n) if n else page.say("day_finding_other")
