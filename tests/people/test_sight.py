"""What a firm with areas of its own sees of a log, and that nobody gains sight by anything they say."""

import itertools
import random
from types import SimpleNamespace

import pytest

from inspect_app.entry.subject import OWN_IDS
from inspect_app.people.sight import Sight, said, seen

SIGHT = Sight("Gannet", frozenset({"mine"}), frozenset({"sub"}), frozenset({"chief", "inspector"}))
SUBJECTS = {"photo": "sha256", "signoff": "walk", "fit": "area", "disposition": "lot", "assignment": "finding",
            "concession": "finding", "admission": "entry"}  # fmt: skip
A, B = "a" * 64, "b" * 64


class Log:
    def __init__(self):
        self.entries, self.names = [], {}

    def say(self, name, kind, by="inspector", subject=None, **body):
        subject = subject or body.get(SUBJECTS.get(kind)) or name
        seq = len(self.entries) + 1
        payload = {"subject": subject, "body": body}
        self.entries.append(said(seq, SimpleNamespace(kind=kind, by=by, digest=name, kid=by, payload=payload)))
        self.names[seq] = name

    def seen(self, sight=SIGHT, shuffle=None):
        entries = list(self.entries)
        if shuffle is not None:
            random.Random(shuffle).shuffle(entries)
        return seen(entries, sight)

    def shown(self, sight=SIGHT):
        return {self.names[seq] for seq in self.seen(sight).entries}


@pytest.fixture
def log():
    """A roof of two areas: each with a walk, a station, a failed answer with a photo, and a lot."""
    log = Log()
    log.say("job", "job", "chief")
    log.say("assembly", "assembly", "chief")
    for area, end, sha256 in (("mine", "1", A), ("theirs", "2", B)):
        log.say(f"area{end}", "area", "chief", subject=area)
        log.say(f"fit{end}", "fit", area=area)
        log.say(f"walk{end}", "walk", areas=[area])
        log.say(f"station{end}", "station", walk=f"walk{end}", area=area)
        log.say(f"answer{end}", "answer", subject=f"station{end}/d/i", walk=f"walk{end}", station=f"station{end}")
        log.say(f"more{end}", "answer", subject=f"station{end}/d/j", walk=f"walk{end}", station=f"station{end}")
        log.say(f"photo{end}", "photo", sha256=sha256, walk=f"walk{end}", answer=f"station{end}/d/i")
        log.say(f"signoff{end}", "signoff", walk=f"walk{end}")
        log.say(f"lot{end}", "lot", subject=f"inspector/work/{end}", population=[{"area": area}])
        log.say(f"disposition{end}", "disposition", "chief", lot=f"inspector/work/{end}")
        log.say(f"mark{end}", "mark", area=area, lot=f"inspector/work/{end}")
        log.say(f"correction{end}", "correction", finding=f"station{end}/d/i", walk=f"walk{end}")
    return log


def of(end):
    names = "area fit walk station answer more photo signoff lot disposition mark correction"
    return {name + end for name in names.split()}


def test_they_see_the_job_its_assemblies_and_everything_that_speaks_of_their_areas(log):
    assert log.shown() == {"job", "assembly"} | of("1")
    assert log.seen().photos.keys() == {A}


def test_they_see_what_their_own_people_said_wherever_it_was(log):
    log.say("own walk", "walk", "sub", areas=["theirs"])
    log.say("own station", "station", "sub", walk="own walk", area="theirs")
    log.say("own answer", "answer", "sub", subject="own station/d/i", walk="own walk", station="own station")
    log.say("recheck", "recheck", finding="own station/d/i", walk="own walk")
    assert log.shown() - of("1") == {"job", "assembly", "own walk", "own station", "own answer", "recheck"}


def test_a_finding_assigned_to_their_firm_shows_its_place_and_its_photos_and_nothing_else_done_there(log):
    log.say("assigned", "assignment", "chief", finding="station2/d/i", firm=" GANNET ")
    wanted = {"area2", "walk2", "station2", "answer2", "photo2", "correction2", "assigned"}
    assert log.shown() - of("1") - {"job", "assembly"} == wanted
    assert log.seen().photos.keys() == {A, B}


def test_what_becomes_theirs_comes_after_what_they_fetched_before(log):
    before = log.seen().entries
    log.say("assigned", "assignment", "chief", finding="station2/d/i", firm="Gannet")
    after = log.seen().entries
    now = len(log.entries)
    assert {log.names[seq] for seq in after if after[seq] == now} == {log.names[seq] for seq in after.keys() - before}
    assert {seq: since for seq, since in after.items() if since < now} == before


@pytest.mark.parametrize("shuffle", range(20))
def test_in_whatever_order_the_log_is_read_the_same_is_seen(log, shuffle):
    log.say("assigned", "assignment", "chief", finding="station2/d/i", firm="Gannet")
    assert log.seen(shuffle=shuffle) == log.seen()


def attempts():
    """Whatever somebody may sign that names what is not theirs: every kind, about everything that is there, under every
    subject that a kind takes (``entry/subject.py``)."""
    about = {"walk": "walk2", "lot": "inspector/work/2", "answer": "station2/d/i", "finding": "station2/d/i",
             "entry": "walk2", "correction": "correction2", "firm": "Gannet", "sha256": B, "photos": [B],
             "document": B, "areas": ["mine"]}  # fmt: skip
    ids = ("walk2", "station2", "theirs", None)
    taken = dict.fromkeys(OWN_IDS, ids) | dict.fromkeys(SUBJECTS, (None,))
    taken |= {"answer": ("station2/d/i", "walk2/d/i"), "lot": ("inspector/work/2",), "stop": ("inspector/work/2/7",),
              "release": ("inspector/work/2/7/first",)}  # fmt: skip
    for kind, station, area in itertools.product(taken, ("station2", None), ("theirs", "mine", None)):
        for subject in taken[kind]:
            if kind == "answer" and subject.startswith("walk") == (station is not None):
                continue
            if kind != "assembly" and not (kind == "area" and subject is None):
                yield kind, subject, about | {"station": station, "area": area}


@pytest.mark.parametrize("by", ["sub", "another sub"])
def test_nobody_gains_sight_by_signing_what_is_not_theirs(log, by):
    plain, said_before = log.shown(), list(log.entries)
    for kind, subject, body in attempts():  # each by itself, then all of them
        log.entries = list(said_before)
        log.say("attempt", kind, by, subject=subject, **body)
        assert log.shown() - {"attempt"} == plain and log.seen().photos.keys() == {A}, (kind, subject, body)
    log.entries = said_before
    for kind, subject, body in attempts():
        log.say("attempt", kind, by, subject=subject, **body)
    assert log.shown() - {"attempt"} == plain and log.seen().photos.keys() == {A}


def test_nor_by_signing_it_before_it_is_said():
    """Names made of other names are known beforehand: a lot is called by its ticket, a stop by lot and panel."""
    log = Log()
    for at, (kind, subject, body) in enumerate(attempts()):
        if subject is None or "/" in subject:
            log.say(f"attempt {at}", kind, "sub", subject=subject, **body)
    log.say("walk9", "walk", areas=["theirs"])
    log.say("lot", "lot", subject="inspector/work/2", population=[{"area": "theirs"}])
    log.say("stop", "stop", subject="inspector/work/2/7", lot="inspector/work/2", area="theirs")
    log.say("disposition", "disposition", "chief", lot="inspector/work/2")
    log.say("fit", "fit", area="theirs")
    assert {name for name in log.shown() if not name.startswith("attempt")} == set()


def test_a_photo_is_theirs_by_who_declared_it_first_not_by_who_knows_its_hash(log):
    log.say("copied", "photo", "sub", sha256=B, walk="walk1")
    assert log.seen().photos.keys() == {A}
    log.say("shown", "recheck", finding="station1/d/i", photos=[B])  # somebody who sees it all shows it to them
    assert log.seen().photos.keys() == {A, B}
