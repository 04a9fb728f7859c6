"""The sentences of a lot's decision, as the record gives them: codes of the words with their facts. The phone says the
same."""

from typing import Any

from inspect_app.report.pages.page import Page
from inspect_app.report.pages.text import line
from inspect_app.report.pages.working import percent


def said(page: Page, sentence: dict[str, Any]) -> str:
    """One sentence as markup: a float is a share of one, a whole number a count, a text stands as it is."""
    facts = {
        name: percent(value) if isinstance(value, float) else line(value, 40)
        for name, value in sentence["facts"].items()
    }  # fmt: skip
    return page.say(sentence["code"], **facts)


def sentences(page: Page, lot: dict[str, Any], severity: str | None, *about: str) -> str:
    """What the lot says of one severity, or of itself as a whole (None), of the things named."""
    told = []
    for one in lot["says"]:
        name = one["code"].removeprefix("lot.says.").split(".")[0]
        if one["severity"] == severity and name in about:
            told.append(said(page, one))
    return " ".join(told)


def lot_where(page: Page, area: Any, low: Any, high: Any) -> str:
    """``Quay slope, panels 1 to 20``; a single panel by itself."""
    return page.say("lot_where", area=page.area(area), low=low, high=high, count=1 if low == high else 2)


def laid_run(page: Page, low: Any, high: Any) -> str:
    """``1 to 26``; a single panel by itself."""
    return line(low, 12) if low == high else page.say("laid_run", low=low, high=high)


def ranges(page: Page, panels: list[int], limit: int = 40) -> str:
    """``3 to 5, 7, 9 to 10``."""
    runs: list[list[int]] = []
    for panel in sorted(set(panels)):
        if runs and panel == runs[-1][1] + 1:
            runs[-1][1] = panel
        else:
            runs.append([panel, panel])
    told = [str(low) if low == high else page.say("run_of", low=low, high=high) for low, high in runs[:limit]]
    return ", ".join(told) + ("…" if len(runs) > limit else "")
