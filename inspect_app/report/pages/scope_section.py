"""What was looked at, what was not, and what is missing."""

from typing import Any

from inspect_app.report.pages.look import BODY, SMALL
from inspect_app.report.pages.lot_words import ranges
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.row import Heading, paragraphs
from inspect_app.report.pages.scope_words import outside_words, scope_words
from inspect_app.report.pages.text import line

COUNTED = ("yes", "unsafe", "covered")
QUESTION = 240  # characters, as where it is answered
FEW = 3  # places of one kind of omission that are told one by one
MOST = 40  # lines of one kind; what is beyond is counted, and contents.json has all


def scope_section(page: Page, number: str) -> list[Any]:
    """Result and relation, omissions, missing evidence."""
    contents, cover = page.contents, page.contents["cover"]
    story: list[Any] = [Heading(page.say("chapter.scope"), "scope", number=number)]
    story += paragraphs(page.say("scope_head"), [f"{scope_words(page)} {outside_words(page)}"])
    story += paragraphs(
        page.say("looked_at"),
        [
            page.say(
                "looked_at_says",
                walks=cover["walks"],
                stations=cover["stations"],
                areas=len(contents["areas"]),
                answers=cover["answers"],
                count=cover["walks"],
            )
        ],
    )
    story += paragraphs(page.say("places"), [_places(page, one) for one in cover["places"]])
    story += paragraphs(
        page.say("result"),
        [
            page.tally(
                [{"result": key, "count": value} for key, value in cover["counts"].items() if value],
                "nothing",
            )
        ],
    )
    story += paragraphs(page.say("relates"), [page.say("relates_says")])
    story += paragraphs(page.say("replaces"), [page.say("replaces_says")])
    if page.foreign:
        story += paragraphs(page.say("language"), [page.say("not_translated", language=page.foreign)])
    if contents["missing"]:
        story.append(Heading(page.say("missing_head", count=len(contents["missing"])), "missing", 1))
        texts = [missing_text(page, one) for one in contents["missing"]]
        story += paragraphs(page.say("missing_label"), _bounded(page, texts), BODY)
        if not contents["final"]:
            story += paragraphs("", [page.say("draft_why")], SMALL)
    elif not contents["final"]:
        story += paragraphs(page.say("draft_mark"), [page.say("draft_asked")])
    story.append(Heading(page.say("not_seen_head"), "not-seen", 1))
    texts = not_seen_texts(page, contents["not_seen"])
    story += paragraphs(page.say("not_seen_label"), _bounded(page, texts) or [page.say("not_seen_none")], BODY)
    return story


def _places(page: Page, one: dict[str, Any]) -> str:
    """How many places were chosen in one way, and how many of them were reached."""
    left = one["count"] - one["yes"] - one["unknown"]
    told = page.say(
        f"places_of.{one['chosen']}", left=left, **{name: one[name] for name in COUNTED}, count=one["count"]
    )
    return told + (" " + page.say("places_unknown", count=one["unknown"]) if one["unknown"] else "")


def missing_text(page: Page, one: dict[str, Any]) -> str:
    """One missing thing in words."""
    facts = dict(one["facts"])
    shown = {"hash" if name == "sha256" else name: line(value, 70) for name, value in facts.items()}
    if "station" in facts:
        shown["station"] = page.place(facts["station"])
    if "at" in facts:
        shown["at"] = page.voice.moment(facts["at"])
    if "question" in facts:
        shown["question"] = line(page.voice.both(facts["question"]))
    return "– " + page.say(f"missing.{one['code']}", **shown)


def not_seen_texts(page: Page, told: list[dict[str, Any]]) -> list[str]:
    """Every omission; where one kind is at more than ``FEW`` places, they are told together."""
    kinds: dict[Any, list[dict[str, Any]]] = {}
    for one in told:
        station = one["facts"].get("station")
        title = page.voice.both(one["facts"].get("title"), "") if one["code"] == "items_not_answered" else ""
        kinds.setdefault((one["code"], title) if station else id(one), []).append(one)
    texts: list[str] = []
    for group in kinds.values():
        texts += [not_seen_text(page, one) for one in group] if len(group) <= FEW else [_many(page, group)]
    return texts


def _many(page: Page, group: list[dict[str, Any]]) -> str:
    """One kind of omission at many places; of items, the five that most of them lack."""
    facts = {"which": ranges(page, [one["facts"]["station"] for one in group]), "count": len(group)}
    if group[0]["code"] == "items_not_answered":
        asked = [page.voice.both(each) for one in group for each in one["facts"]["questions"]]
        often = sorted(set(asked), key=lambda each: (-asked.count(each), each))[:5]
        facts |= {"questions": _small("; ".join(f"{line(each, 120)} ({asked.count(each)})" for each in often)),
                  "title": line(page.voice.both(group[0]["facts"]["title"]))}  # fmt: skip
    return "– " + page.say(f"not_seen_many.{group[0]['code']}", **facts)


def not_seen_text(page: Page, one: dict[str, Any]) -> str:
    """One omission in words."""
    facts = one["facts"]
    shown = {name: line(value, 70) for name, value in facts.items() if name not in ("questions", "count")}
    if facts.get("station"):
        shown["station"] = page.place(facts["station"])
    if one["code"] == "items_not_answered":
        shown["where"] = page.place(facts["station"]) if facts["station"] else page.say("walk_n", n=facts["walk"])
        shown["title"] = line(page.voice.both(facts["title"]))
        shown["questions"] = _small("; ".join(line(page.voice.both(each), QUESTION) for each in facts["questions"]))
    return "– " + page.say(f"not_seen.{one['code']}", count=facts.get("count", 0), **shown)


def _bounded(page: Page, texts: list[str]) -> list[str]:
    if len(texts) <= MOST:
        return texts
    return [*texts[:MOST], page.say("and_more", count=len(texts) - MOST)]


def _small(markup: str) -> str:
    """What is many and seldom read, in small print."""
    return f'<font color="#646b70" size="7.3">{markup}</font>'
