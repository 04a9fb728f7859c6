"""An eye on the screen shown: our own measures (``eye.js``) and an outside accessibility checker."""

import json
from functools import cache
from pathlib import Path
from typing import Any

import yaml

ROOT = Path(__file__).parents[2]
OURS = Path(__file__).with_name("eye.js")
READER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # the same, in C where it was built
OUTSIDE = ROOT / "node_modules" / "axe-core" / "axe.min.js"
# Off in the checker unless asked for: WCAG 2.2 SC 1.4.6 (7:1) and SC 2.5.8. The weaker 4.5:1 is then part of 7:1.
RULES = {"color-contrast-enhanced": {"enabled": True}, "target-size": {"enabled": True}}
RULES |= {"color-contrast": {"enabled": False}}
# Slow in the checker, the same in every language, and measured by our own eye in each.
WORDLESS = {rule: {"enabled": False} for rule in RULES}
CHECK = """async (rules) => (await axe.run(document, { resultTypes: ['violations'], preload: false, rules })).violations
  .flatMap(({ id, nodes }) => nodes.map((node) => `axe ${id}: ${node.html.slice(0, 160)}`))"""


SPEAK = "async (code) => (await import('/static/words/say.js')).setLanguage(code)"
SMALLEST = {"width": 320, "height": 568}


def readable(page: Any) -> None:
    """As the tour looks at every other screen: the smallest phone, usual and doubled text, both languages."""
    eye, usual = Eye(page), page.viewport_size
    page.set_viewport_size(SMALLEST)
    eye.size(16)
    wrong = eye.places()
    eye.size(32)
    for again, code in enumerate(("es", "en")):
        page.evaluate(SPEAK, code)
        wrong += [f"{code}: {fault}" for fault in eye.faults(bool(again))]
    assert not wrong, "\n".join([page.evaluate("location.hash"), *wrong])
    eye.size(16)
    page.set_viewport_size(usual)


class Eye:
    """``faults()``: a line for each thing wrong on the page as it stands, in the language it speaks."""

    def __init__(self, page: Any) -> None:
        self.page = page
        self.text = page.context.new_cdp_session(page)

    def size(self, px: int) -> None:
        """Set the phone's text size, as its owner does in the settings: 16 px is usual, 32 doubled."""
        for _ in range(50):
            self.text.send("Page.setFontSizes", {"fontSizes": {"standard": px}})
            if self.page.evaluate("(px) => matchMedia(`(width: ${innerWidth / px}em)`).matches", px):
                return
            self.page.wait_for_timeout(20)
        raise AssertionError(f"the text did not become {px} px")

    def places(self) -> list[str]:
        """Only what is too small or too wide: controls are smallest at the usual text size."""
        return self.look("[...eye.small(), ...eye.wide()]")

    def faults(self, again: bool = False) -> list[str]:
        """``again``: the same screen in its second language."""
        return list(dict.fromkeys(self.look("eye.faults()") + self.page.evaluate(CHECK, WORDLESS if again else RULES)))

    def look(self, at: str) -> list[str]:
        found = self.page.evaluate(f"'eye' in window ? {at} : null")
        if found is None:  # a page that was loaded anew
            for script in (OURS, OUTSIDE):  # as the browser's owner, whom the page's own policy does not bind
                self.page.evaluate(script.read_text("utf-8") + "\n;0")
            self.page.evaluate("(text) => { eye.words = JSON.parse(text) }", words_of_one_language())
            found = self.page.evaluate(at)
        return list(found)


@cache
def words_of_one_language() -> str:
    """Texts of the screens and the checklists that are written in one language and in no other way, as JSON."""
    pairs = []
    for file in sorted((ROOT / "static" / "words").glob("*.json")):
        if file.name == "server.json":
            continue  # the server's answers stay in the language in which they were asked for
        pairs += json.loads(file.read_text("utf-8")).values()
    for file in sorted((ROOT / "checklists").glob("*.yaml")):
        pairs += bilingual(yaml.load(file.read_text("utf-8"), READER))
    said = {code: {pair[code].strip() for pair in pairs} for code in ("en", "es")}
    return json.dumps({"en": sorted(said["en"] - said["es"]), "es": sorted(said["es"] - said["en"])})


def bilingual(value: Any) -> list[dict[str, str]]:
    if isinstance(value, dict):
        return [value] if set(value) == {"en", "es"} else [pair for one in value.values() for pair in bilingual(one)]
    return [pair for one in value for pair in bilingual(one)] if isinstance(value, list) else []
