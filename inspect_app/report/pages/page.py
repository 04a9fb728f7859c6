"""What every section is given: the contents, the voice, the photos."""

from typing import Any, NamedTuple

from inspect_app.report.pages.mark import sign
from inspect_app.report.pages.picture import Find
from inspect_app.report.pages.text import line, passage
from inspect_app.report.pages.voice import Voice


class Page(NamedTuple):
    """One report being laid out."""

    contents: dict[str, Any]
    voice: Voice
    find: Find

    def say(self, key: str, /, **facts: Any) -> str:
        """Words; facts are put in as they are, so escape what people wrote."""
        return self.voice.say(key, **facts)

    def passage(self, text: Any) -> list[str]:
        """A free text as paragraphs, cut visibly when it is very long."""
        return passage(text, self.voice.say("cut"))

    @property
    def foreign(self) -> str:
        """The name of the language the job is kept in, where it is not the report's; else empty."""
        kept = self.contents["recorded_in"]
        return "" if kept == self.voice.language else self.say(f"language.{kept}")

    def recorded(self, key: str = "as_recorded", language: str | None = None) -> str:
        """The mark behind what a person wrote in another language: it is never translated. Empty in its own."""
        named = self.foreign if language is None else self.say(f"language.{language}")
        return f' <font color="#646b70" size="7.3">{self.say(key, language=named)}</font>' if named else ""

    def area(self, identity: Any) -> str:
        """The name of a roof area, one outside of what the report speaks of too: a crew's day may name it."""
        for area in self.contents["areas"]:
            if area["id"] == identity:
                return line(area["name"], 70)
        return line(self.contents["area_names"].get(identity) or identity, 70)

    def station(self, n: Any) -> dict[str, Any]:
        """The station of that number, empty when there is none."""
        return next((one for one in self.contents["stations"] if one["n"] == n), {})

    def place(self, n: Any) -> str:
        """``place 3: Quay slope, panel 14, 28.5 ft from the low end, field``."""
        station = self.station(n)
        if not station:
            return self.say("whole_walk")
        return self.say("place", n=n, where=self.where(station))

    def where(self, station: dict[str, Any]) -> str:
        """``Quay slope, panel 14, 28.5 ft from its low end, field``."""
        return self.say(
            "place_at",
            area=self.area(station["area"]),
            panel=line(station["panel"], 12),
            distance=self.voice.quantity(station["from_low_end"]),
            zone=self.zone(station["zone"]),
        )

    def zone(self, zone: Any) -> str:
        """The zone in words where it is one of the usual three."""
        return self.say(f"zone.{zone}") if zone in ("field", "edge", "corner") else line(zone, 40)

    def tally(self, found: list[dict[str, Any]], empty: str = "not_looked") -> str:
        """``◆ 1 fails · ○ 3 pass``."""
        if not found:
            return f'<font color="#646b70" size="7.3">{self.say(empty)}</font>'
        return " · ".join(
            f"{sign(one['result'])}\u00a0{one['count']}\u00a0{self.say('tally.' + one['result'], count=one['count'])}"
            for one in found
        )

    def photo_links(self, photos: list[dict[str, Any]]) -> str:
        """Photos of an answer as links into the photo log."""
        shown = [self.to("photo", one["n"]) if one["n"] else line(one["sha256"][:12]) + "…" for one in photos[:24]]
        return ", ".join(shown) + ("…" if len(photos) > 24 else "")

    def to(self, kind: str, n: Any, words: str | None = None) -> str:
        """A link to ``photo``, ``finding``, ``place``, ``walk``, ``lot`` number ``n``, or the ``rule`` so named."""
        return f'<link destination="#{kind}-{n}" color="#8a3f17">{words or n}</link>'
