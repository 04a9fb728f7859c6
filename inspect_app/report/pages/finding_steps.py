"""What was said of a finding after it was opened, step by step in the order of its history."""

from typing import Any

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.reading import reading_text
from inspect_app.report.pages.row import paragraphs
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import inputs_text, rule_text, values_text

LISTS = ("corrections", "rechecks", "reopenings")
FREE = 600  # letters of what somebody wrote; the entry has all of it


def who_and_when(page: Page, finding: dict[str, Any], said: dict[str, Any]) -> str:
    return f"{page.voice.person(finding['people'].get(said['by']))}, {page.voice.moment(said['at'])}"


def entry_of(page: Page, said: dict[str, Any]) -> str:
    return page.say("entry", digest=line(said["digest"], 50))


def steps(page: Page, finding: dict[str, Any]) -> list[Any]:
    """Who was to correct it and why it came about, then each step, then what ended it otherwise."""
    told = finding["told"]
    story = _assigned(page, finding, told["assignment"]) if told["assignment"] else []
    said = {one["digest"]: (name, one) for name in LISTS for one in told[name]}
    if told["concession"]:
        said[told["concession"]["digest"]] = ("concessions", told["concession"])
    for one in told["history"]:
        if one["digest"] in said:
            story += _step(page, finding, *said[one["digest"]])
    if finding["state"] == "withdrawn":
        ended = told["closed_by"]
        text = page.say("finding_withdrawn", result=page.voice.result(told["result"]))
        story += paragraphs(page.say("finding_step.withdrawn"), [text + _signed(page, finding, ended)])
    return story


def _assigned(page: Page, finding: dict[str, Any], one: dict[str, Any]) -> list[Any]:
    parts = [line(one[name], 80) for name in ("firm", "crew") if one[name].strip()]
    parts += [page.say("finding_by_day", day=page.voice.day(one["by_day"]))] if one["by_day"] else []
    parts += [line(one["note"], FREE) + page.recorded()] if one["note"].strip() else []
    cause = [page.voice.both(finding["cause"])] if finding["cause"] else _known(page, one["cause"]["code"])
    cause = [line(text, 160) for text in cause]
    cause += [f"“{line(one['cause']['words'], FREE)}”{page.recorded()}"] if one["cause"]["words"].strip() else []
    story = paragraphs(page.say("finding_cause"), [" ".join(cause)]) if cause else []
    who = ", ".join(parts) or page.say("finding_nobody")
    return story + paragraphs(page.say("finding_to_correct"), [who + _signed(page, finding, one)])


def _known(page: Page, code: str | None) -> list[str]:
    """A cause of the list that all definitions share; another definition's code as it is."""
    if not code:
        return []
    return [page.say(f"cause.{code}") if page.voice.knows(f"cause.{code}") else str(code)]


def _step(page: Page, finding: dict[str, Any], name: str, one: dict[str, Any]) -> list[Any]:
    kind = {"corrections": "done", "rechecks": "note"}.get(name, "reason")
    words = line(one[kind], FREE) + page.recorded() if one[kind].strip() else ""
    told = [page.say(f"finding_step.{_what(name, one)}"), words, *_reference(page, name, one)]
    stands = page.say(f"finding_stands.{_stands(name, one)}") if _stands(name, one) else ""
    text = " ".join(part for part in (f"<b>{told[0]}</b>", *told[1:], stands) if part)
    story = paragraphs(page.say(f"finding_label.{name}"), [text + _signed(page, finding, one)])
    story += _reading(page, finding, one)
    problems = [page.say(f"finding.problem.{code}") for code in one["problems"]]
    return story + paragraphs("", [f"▲ {text}" for text in problems], SMALL)


def _what(name: str, one: dict[str, Any]) -> str:
    return str(one["result"]) if name == "rechecks" else name


def _stands(name: str, one: dict[str, Any]) -> str:
    """What came of it: of a correction whether it was found good, of the rest whether it counts."""
    if name == "corrections":
        return str(one["state"])
    if one["counts"]:
        return "spent" if one.get("spent") else ""
    return "no_effect"


def _reference(page: Page, name: str, one: dict[str, Any]) -> list[str]:
    if name != "concessions":
        return []
    named = one["reference"].strip() or (one["document"] or "")[:16] or "—"
    return [page.say("finding_document", reference=line(named, 120))]


def _reading(page: Page, finding: dict[str, Any], one: dict[str, Any]) -> list[Any]:
    judged = finding["judged"].get(one["digest"])
    if judged is None:
        return []
    working = judged["working"]
    shown = f"<b>{sign(judged['result'])} {page.voice.result(judged['result'])}</b>"
    read = reading_text(page, {"reading": one["reading"], "working": working, "instrument": None})
    values = values_text(page, working, judged["result"])
    story = paragraphs(page.say("reading"), [" · ".join(part for part in (shown, read, values) if part)], BODY)
    return story + paragraphs("", [inputs_text(page, working) + " — " + rule_text(page, judged, "rule", True)], SMALL)


def _signed(page: Page, finding: dict[str, Any], one: dict[str, Any]) -> str:
    who = f"{who_and_when(page, finding, one)} · {entry_of(page, one)}"
    return f' <font color="#646b70" size="7.3">{who}</font>'
