"""However findings' entries arrive, however often, the record says the same."""

import random

from inspect_app.record.fold import fold
from tests.record.finding_sample import FAILED, VERDICT, Place, picture
from tests.record.rhythm_sample import ENGINEER, FOREMAN, INSPECTOR, LEAD, OWNER, PEOPLE, REVIEWER, SECOND

KIDS = (FOREMAN, SECOND, INSPECTOR, LEAD) * 2 + (REVIEWER, ENGINEER, OWNER)


def wild(seed: int, length: int = 24) -> Place:
    """Anybody says anything of three findings, and of what was said, over and over."""
    chance = random.Random(seed)
    site = Place(chance.choice(["critical", "major", "minor", None]), chance.choice([None, "limit@2"]))
    findings = [site.finding, site.hand(chance.choice(KIDS)), site.hand(severity="critical")]
    said: dict[str, list[tuple[str, str]]] = {"correction": [("none", "c0")], "recheck": [("none", "r0")],
                                              "reopening": [("none", "o0")], "concession": []}  # fmt: skip
    about: dict[str, str] = {}
    answers, pictures = [site.failing], [picture(str(at)) for at in range(4)]
    for at in range(length):
        kid, finding = chance.choice(KIDS), chance.choice([*findings, *findings, "nobody's"])
        kind = chance.choice([*said, "correction", "recheck", "assignment", "answer"])
        carried = {"photos": chance.sample(pictures, chance.randint(0, 2)),
                   **chance.choice([{}, {"reading": {"n": at}, "verdict": chance.choice([FAILED, VERDICT])}])}
        again = chance.choice(said.get(kind) or [("none", "")]) if chance.random() < 0.3 else None
        same = {"subject": again[1], "replaces": (again[0],)} if again else {}
        near = [one for one in said["correction"] if about.get(one[0]) == finding]
        correction = chance.choice(near if near and chance.random() < 0.8 else said["correction"])[0]
        if kind == "correction":
            digest = site.correct(kid, finding, **same, **carried)
        elif kind == "recheck":
            result = chance.choice(["good", "good", "not_good"])
            digest = site.recheck(correction, result, kid, finding, **same, **carried)
        elif kind == "reopening":
            of = [chance.choice(said["recheck"] + said["concession"])[0] for _ in range(chance.randint(0, 2))]
            digest = site.reopen(*of, kid=kid, finding=finding, **same)
        elif kind == "concession":
            digest = site.concede(kid, chance.choice([None, picture("letter")]), chance.choice(["", "4"]), finding,
                                  (again[0],) if again else ())
        elif kind == "assignment":
            site.assign(kid, finding)
            continue
        else:
            answers.append(site.reply(chance.choice(["fail", "pass"]), chance.choice(["critical", "minor"]), None,
                                      kid, (chance.choice(answers),)))
            continue
        about[digest] = finding
        said[kind].append((digest, site.entries[-1]["payload"]["subject"]))
    return site  # fmt: skip


def test_any_order_duplicates_and_replays_give_the_same_findings() -> None:
    states: set[str] = set()
    for seed in range(25):
        site, chance = wild(seed), random.Random(seed)
        wanted = site.record()
        states |= {one["state"] for one in wanted["findings"].values()}
        for _ in range(4):
            arrival = site.entries + chance.choices(site.entries, k=9)
            chance.shuffle(arrival)
            assert fold(arrival, PEOPLE) == wanted
        for one in wanted["findings"].values():
            history = [each["digest"] for each in one["history"]]
            assert len(history) == len(set(history))
    assert states == {"open", "corrected", "closed", "conceded", "withdrawn"}


def test_every_statement_stands_in_a_history_or_is_flagged_as_speaking_of_nothing() -> None:
    kinds = ("finding", "assignment", "correction", "recheck", "reopening", "concession")
    for seed in range(10):
        site = wild(seed)
        record = site.record()
        told = {each["digest"] for one in record["findings"].values() for each in one["history"]}
        told |= {flag["digest"] for flag in record["flags"] if flag["code"] == "finding_unknown"}
        assert {one["digest"] for one in site.entries if one["payload"]["kind"] in kinds} <= told


def test_nothing_closes_by_its_corrector_s_word_nor_critical_without_two_shows_of_evidence() -> None:
    closed = 0
    for seed in range(200, 300):
        for one in wild(seed).record()["findings"].values():
            if one["state"] != "closed":
                continue
            closed += 1
            recheck = next(each for each in one["rechecks"] if each["digest"] == one["closed_by"]["digest"])
            correction = next(each for each in one["corrections"] if each["digest"] == recheck["correction"])
            assert recheck["by"] != correction["by"] and recheck["result"] == "good"
            assert PEOPLE[recheck["by"]]["role"] in ("administrator", "inspector", "foreman")
            bad = [each for each in one["rechecks"] if each["correction"] == correction["digest"] and each["counts"]]
            assert {each["result"] for each in bad if not each["spent"]} == {"good"}
            spent = {digest for each in one["reopenings"] if each["counts"] for digest in each["of"]}
            assert recheck["digest"] not in spent
            if one["severity"] == "critical":
                assert all(each["photos"] or each["reading"] for each in (recheck, correction))
    assert closed > 15
