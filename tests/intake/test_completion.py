"""A report becomes due when a signed walk is whole, whatever came last."""

import hashlib

import pytest

from inspect_app.entry.format import parse
from tests.bodies import body_of

PHOTO = hashlib.sha256(b"a photo").hexdigest()


def walked(office, photo=None):
    job, _ = office.job()
    foreman = office.phone("fay", "foreman", job)
    return job, foreman, office.walk(foreman, job, photo)


def arrive(office, job, sha256=PHOTO):
    with office.app.app_context():
        office.parts.log.receive_photo(job, sha256, 7, "image/jpeg")


def test_nothing_is_due_before_the_signature(office):
    _, foreman, tokens = walked(office)
    foreman.send(*tokens[:-1])
    assert office.told == []


def test_the_signature_makes_a_report_due(office):
    job, foreman, tokens = walked(office)
    foreman.send(*tokens)
    assert office.told == [job]


def test_sending_again_what_is_held_makes_nothing_due(office):
    job, foreman, tokens = walked(office)
    foreman.send(*tokens)
    foreman.send(*tokens)
    assert office.told == [job]


def test_the_last_photo_of_a_signed_walk_makes_a_report_due(office):
    job, foreman, tokens = walked(office, PHOTO)
    foreman.send(*tokens)
    arrive(office, job, hashlib.sha256(b"another").hexdigest())
    assert office.told == [job]
    arrive(office, job)
    assert office.told == [job, job]


def test_another_walk_beside_a_signed_one_makes_nothing_due_until_it_is_signed_itself(office):
    job, foreman, tokens = walked(office)
    foreman.send(*tokens)
    second = office.walk(foreman, job, PHOTO)
    for token in second[:-1]:
        foreman.send(token)
    arrive(office, job)
    assert office.told == [job]
    foreman.send(second[-1])
    assert office.told == [job, job]


@pytest.mark.parametrize("kind", ["job", "assembly", "area", "fit"])
def test_what_every_walk_stands_on_makes_a_report_due_once_a_walk_is_signed(office, kind):
    job, foreman, tokens = walked(office)
    subject = {"job": job, "fit": body_of("fit")["area"]}.get(kind, "")
    newer = foreman.entry(kind, job, subject)
    foreman.send(newer)
    foreman.send(*tokens[:-1])
    assert office.told == []
    foreman.send(tokens[-1])
    assert office.told == [job]
    foreman.send(newer)
    assert office.told == [job]
    foreman.send(foreman.entry(kind, job, subject))
    assert office.told == [job, job]


def test_many_changes_that_arrive_together_make_one_report_due(office):
    job, foreman, tokens = walked(office)
    foreman.send(*tokens)
    foreman.send(*(foreman.entry(kind, job) for kind in ("assembly", "area", "area")))
    assert office.told == [job, job]


@pytest.mark.parametrize("kind", ["walk", "station", "answer", "photo"])
def test_what_speaks_of_a_signed_walk_makes_a_report_due_again(office, kind):
    job, foreman, tokens = walked(office)
    foreman.send(*tokens)
    walk, station = (parse(token).payload["subject"] for token in tokens[:2])
    more = {
        "walk": lambda: foreman.entry("walk", job, walk, replaces=[parse(tokens[0]).digest]),
        "station": lambda: foreman.entry("station", job, "", {"walk": walk}),
        "answer": lambda: foreman.entry("answer", job, f"{station}/x/{body_of('answer')['item']}",
                                        {"walk": walk, "station": station}),
        "photo": lambda: foreman.entry("photo", job, PHOTO, {"walk": walk, "station": station, "sha256": PHOTO}),
    }  # fmt: skip
    assert foreman.send(more[kind]()).json["answers"][0]["status"] == "accepted"
    assert office.told == [job, job]


def test_a_walk_that_arrives_after_its_sign_off_makes_a_report_due(office):
    job, foreman, tokens = walked(office)
    foreman.send(tokens[-1])
    foreman.send(tokens[0])
    assert office.told == [job, job]


def test_a_walk_signed_by_somebody_else_alone_is_not_signed(office):
    job, foreman, tokens = walked(office)
    other = office.phone("ines", "inspector", job)
    walk = parse(tokens[0]).payload["subject"]
    foreman.send(tokens[0])
    other.send(other.entry("signoff", job, walk, {"walk": walk}))
    foreman.send(tokens[1])
    assert office.told == [job]


def test_what_fails_afterwards_takes_no_receipt_away(office):
    def fail(job):
        raise KeyError(job)

    _, foreman, tokens = walked(office)
    office.parts.completion.after_intake = fail
    answers = foreman.send(*tokens).json["answers"]
    assert [answer["status"] for answer in answers] == ["accepted"] * 3


def test_a_server_that_starts_looks_again_at_what_is_signed(office):
    job, foreman, tokens = walked(office)
    office.job()
    foreman.send(*tokens)
    again = office.again()
    assert again.told == []
    with again.app.app_context():
        again.parts.completion.look_again()
    assert again.told == [job]


def test_a_photo_before_the_signature_makes_nothing_due(office):
    job, foreman, tokens = walked(office, PHOTO)
    foreman.send(*tokens[:-1])
    arrive(office, job)
    assert office.told == []
    foreman.send(tokens[-1])
    assert office.told == [job]
