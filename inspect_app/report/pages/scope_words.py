"""What a report speaks of, in words, and what the job holds beyond that: on the cover and where the method is told."""

from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line


def kind_words(page: Page) -> str:
    """``Report of one walk``."""
    return page.say(f"kind.{page.contents['kind']}")


def scope_words(page: Page) -> str:
    """It is named, and that the results relate to nothing else: ``It speaks of one walk: …``."""
    told = page.contents["about"]
    facts: dict[str, Any] = {"n": told.get("n")}
    if "at" in told:
        facts["at"] = page.voice.moment(told["at"])
    if "day" in told:
        facts["day"] = page.voice.day(told["day"])
    if "title" in told:
        facts["title"] = line(page.voice.both(told["title"]), 80)
    for name in ("crew", "by", "area"):
        if name in told:
            facts[name] = line(told[name], 60) or "—"
    if "areas" in told:
        facts["areas"] = ", ".join(line(one, 60) for one in told["areas"][:6]) or "—"
    for name in ("from_low_end", "radius"):
        if name in told:
            facts[name] = page.voice.quantity(told[name])
    if "panel" in told:
        facts["panel"] = line(told["panel"], 12)
    return page.say(f"scope_is.{page.contents['kind']}", **facts) + " " + page.say("relates_only")


def outside_words(page: Page) -> str:
    """What is outside of it, counted; for the whole job that nothing is."""
    left = page.contents["outside"]
    counted = [page.say(f"outside.{name}", count=left[name]) for name in ("walks", "stations", "lots", "findings")
               if left[name]]  # fmt: skip
    if left["areas"]:
        named = ", ".join(line(one, 50) for one in left["areas"][:6]) + ("…" if len(left["areas"]) > 6 else "")
        counted.append(page.say("outside.areas", count=len(left["areas"]), names=named))
    if not counted:
        return page.say("outside.none" if page.contents["kind"] == "closeout" else "outside.nothing")
    told = page.say("outside", what="; ".join(counted))
    if left["unsettled"]:
        told += " " + page.say("outside.unsettled", count=left["unsettled"], critical=left["critical"])
    return told
