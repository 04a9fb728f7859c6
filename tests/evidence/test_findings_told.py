"""What a report says of its findings is what its entries give: whoever closes one by hand in the contents is found."""

import copy
import json

import pytest

from inspect_app.evidence.entries import entry_facts
from inspect_app.evidence.fact import FAILS, HOLDS, UNKNOWN
from inspect_app.evidence.findings_told import findings_fact, tally
from inspect_app.report.finding import findings
from inspect_app.report.order import numbering
from tests.evidence.drawn import Site
from tests.evidence.record import answer, author, counted, files
from tests.evidence.record import made as older
from tests.evidence.test_lots_told import leaves
from tests.phone import new_uuid

SIGNED = {"name": "", "role": ""}


class Followed(Site):
    """A walk with a failed answer that was corrected and closed, one conceded, one by hand that is open."""

    def __init__(self) -> None:
        self.inspector, self.engineer = author("ira", "inspector"), author("eno", "engineer")
        super().__init__()
        walk = new_uuid()
        self.say(self.foreman, "walk", walk, {"areas": [self.area]})
        self.first_finding, second = f"{walk}/flange/screw", f"{walk}/flange/dimple"
        self.say(self.foreman, "answer", self.first_finding, counted(self.first_finding, 3, "fail"))
        self.say(self.foreman, "answer", second, answer(second, "fail"))
        self.correction = self.correct(self.first_finding, ["b" * 64], None)
        self.recheck = self.say(self.inspector, "recheck", new_uuid(), {
            "finding": self.first_finding, "correction": self.correction, "result": "good", "photos": ["c" * 64],
            "walk": None, **counted_again(1, "pass"), **SIGNED})  # fmt: skip
        self.say(self.engineer, "concession", second, {"finding": second, "document": "d" * 64, **SIGNED})
        self.by_hand = new_uuid()
        self.say(self.chief, "finding", self.by_hand, {
            "walk": walk, "area": self.area, "severity": "critical", "photos": ["e" * 64], **SIGNED})  # fmt: skip

    def correct(self, finding: str, photos: list[str], reading: object) -> str:
        body = {"finding": finding, "photos": photos, "walk": None, "reading": reading, "verdict": None, **SIGNED}
        return self.say(self.foreman, "correction", new_uuid(), body)

    @property
    def authors(self):
        return self.chief, self.foreman, self.inspector, self.engineer

    def told(self):
        made, record = self.made(), self.record()
        people = {one.person: {"name": one.person, "role": one.role, "kids": []} for one in self.authors}
        said = findings(record, people, {}, numbering(record, {}), [], {})
        made.contents.update(findings=said, cover=tally(said), daily=[], silent=[])
        return made


def counted_again(reading: int, result: str) -> dict:
    told = counted("w/d/i", reading, result)
    return {"reading": {"count": reading}, "verdict": told["verdict"]}


HONEST = Followed()
MADE, RECORD = HONEST.told(), HONEST.record()


def fact_of(change) -> str:
    told = copy.deepcopy(MADE.contents)
    change(told)
    return findings_fact(told, RECORD).status


def test_an_honest_report_says_of_its_findings_what_its_entries_give():
    through = json.loads(json.dumps(MADE.contents))
    told = {fact.name: fact.status for fact in entry_facts(files(MADE), through)}
    assert told["findings_follow"] == told["verdicts_recompute"] == HOLDS
    states = {one["id"]: one["state"] for one in through["findings"]}
    assert sorted(states.values()) == ["closed", "conceded", "open"] and states[HONEST.by_hand] == "open"
    assert through["cover"]["critical"] == 1, "the one by hand"


def test_each_word_of_it_changed_by_itself_is_found():
    told = copy.deepcopy(MADE.contents)
    missed, count = [], 0
    for at, one in enumerate(told["findings"]):
        held = ("told", "id", "n", "state", "source", "result", "area", "pictures")
        for path in leaves({name: one[name] for name in held}):
            if path[0] == "pictures" and path[2] not in ("sha256", "role", "of", "by", "at"):
                continue  # what is held, drawn and numbered the entries cannot tell
            there = told["findings"][at]
            for name in path[:-1]:
                there = there[name]
            before = there[path[-1]]
            there[path[-1]] = not before if isinstance(before, bool) else "x"
            missed += [] if findings_fact(told, RECORD).status == FAILS else [path]
            there[path[-1]], count = before, count + 1
    assert missed == [] and count > 200 and findings_fact(told, RECORD).status == HOLDS


@pytest.mark.parametrize(
    "change",
    [
        lambda told: told["findings"].pop(),
        lambda told: told["findings"].append(told["findings"][0] | {"n": 4}),
        lambda told: told["findings"].__setitem__(2, told["findings"][0] | {"n": 3}),
        lambda told: told["findings"].reverse(),
        lambda told: told.pop("findings"),
        lambda told: told["cover"].update(critical=0),
        lambda told: told["cover"]["states"].pop("open"),
        lambda told: told["findings"][2].update(severity="minor"),
        lambda told: [one.pop("told") for one in told["findings"]],
        lambda told: told.update(findings=[], cover={}),
        lambda told: (told.pop("daily"), [one.pop("told") for one in told["findings"]]),
    ],
    ids=["left out", "doubled", "twice", "renumbered", "none", "cover", "counted", "milder", "bare", "empty", "older"],
)
def test_a_finding_left_out_doubled_closed_or_made_milder_is_found(change):
    assert fact_of(change) == FAILS


def test_a_forged_closing_that_the_entries_do_not_hold_is_found():
    forged = Followed()
    forged.say(forged.foreman, "recheck", new_uuid(), {
        "finding": forged.by_hand, "correction": forged.correct(forged.by_hand, ["f" * 64], None), "result": "good",
        "photos": [], "reading": None, "verdict": None, **SIGNED})  # fmt: skip
    made = forged.told()
    one = next(one for one in made.contents["findings"] if one["id"] == forged.by_hand)
    assert one["state"] == "corrected" and findings_fact(made.contents, forged.record()).status == HOLDS
    one["state"] = one["told"]["state"] = "closed"
    made.contents["cover"] = tally(made.contents["findings"])
    assert findings_fact(made.contents, forged.record()).status == FAILS


def test_a_recheck_whose_reading_judged_again_fails_is_found():
    forged = Followed()
    forged.say(forged.inspector, "recheck", new_uuid(), {
        "finding": forged.first_finding, "correction": forged.correction, "result": "good", "photos": [],
        **counted_again(3, "pass"), **SIGNED})  # fmt: skip
    told = {fact.name: fact for fact in entry_facts(files(forged.told()), forged.told().contents)}
    assert told["verdicts_recompute"].status == FAILS and told["verdicts_recompute"].about["different"] == 1


def test_a_report_of_a_time_before_claims_nothing_of_what_became_of_a_finding_and_holds():
    made = older()

    def told():
        return {fact.name: fact.status for fact in entry_facts(files(made), made.contents)}["findings_follow"]

    assert "findings" not in made.contents and told() == HOLDS
    failing = next(one["id"] for one in made.contents["answers"] if one["result"] == "fail")
    made.contents["findings"] = [{"id": failing, "state": "open"}]
    assert told() == HOLDS
    made.contents["findings"] = []
    assert told() == FAILS
    assert findings_fact(None, {}).status == UNKNOWN
