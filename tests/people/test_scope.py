"""What a firm with areas of its own fetches: page by page everything that is theirs, also what becomes theirs later."""

import pytest

from inspect_app.entry.format import parse
from tests.phone import new_uuid


class Site:
    """A sub's area and another, each with a walk, a station and a failed answer by the inspector."""

    def __init__(self, office):
        self.office = office
        self.job, self.chief = office.job()
        self.mine, self.other = new_uuid(), new_uuid()
        self.inspector, self.sub = (office.phone(name, role, self.job) for name, role in
                                    (("ines", "inspector"), ("sue", "foreman")))  # fmt: skip
        self.give([self.mine])
        self.chief.send(*(self.chief.entry("area", self.job, area) for area in (self.mine, self.other)))
        self.findings = {area: self.look(area) for area in (self.mine, self.other)}

    def give(self, areas):
        with self.office.app.app_context():
            firm = self.office.app.extensions["office"].firms.join(self.job, "Gannet (invented)", "sub", areas)
            self.office.parts.membership.place(self.sub.person.id, self.job, firm.id)

    def look(self, area):
        walk, station = new_uuid(), new_uuid()
        say, job = self.inspector.entry, self.job
        finding = f"{station}/d/i"
        answer = {"walk": walk, "station": station, "area": None, "item": "i", "photos": []}
        self.inspector.send(say("walk", job, walk, {"areas": [area], "placed": []}),
                            say("station", job, station, {"walk": walk, "area": area}),
                            say("answer", job, finding, answer))  # fmt: skip
        return finding

    def fetched(self, limit=2, after=0):
        """``(entries, cursor)`` by the cursor, to the end."""
        found, more = [], True
        while more:
            page = self.sub.pull(after, limit=limit).json
            found += [parse(one["entry"]) for one in page["entries"]]
            assert page["next"] > after or not page["more"]
            after, more = page["next"], page["more"]
        return found, after


@pytest.fixture
def site(office):
    return Site(office)


@pytest.fixture
def any_site(any_office):
    """On each database that Seamwalk runs on: where it decides."""
    return Site(any_office)


def kinds(entries):
    return sorted(entry.kind for entry in entries)


def test_page_by_page_they_get_what_is_theirs_each_once(any_site):
    for limit in (1, 2, 200):
        entries, _ = any_site.fetched(limit)
        assert kinds(entries) == ["answer", "area", "job", "station", "walk"]
        assert len({entry.digest for entry in entries}) == len(entries)


def test_what_becomes_theirs_by_a_word_said_today_comes_after_what_they_fetched_yesterday(site):
    _, cursor = site.fetched()
    given = {"finding": site.findings[site.other], "firm": "gannet  (Invented)"}
    site.chief.send(site.chief.entry("assignment", site.job, site.findings[site.other], given))
    entries, _ = site.fetched(after=cursor)
    assert kinds(entries) == ["answer", "area", "assignment", "station", "walk"]


def test_they_meet_the_authors_of_what_they_see_and_nobody_else(site):
    site.office.phone("olga", "owner", site.job)
    told = site.sub.client.get("/api/jobs", headers=site.sub.bearer).json["jobs"][0]
    assert {one["name"] for one in told["people"]} == {site.sub.person.name, site.inspector.person.name,
                                                      site.chief.person.name}  # fmt: skip
    assert told["partial"] and told["sight"] and told["areas"] == [site.mine]
    whole = site.inspector.client.get("/api/jobs", headers=site.inspector.bearer).json["jobs"][0]
    assert len(whole["people"]) == 4 and not whole["partial"] and whole["sight"] == ""
    assert whole["areas"] is None


def test_given_another_area_they_are_told_to_fetch_anew_and_get_it(site):
    before = site.sub.client.get("/api/jobs", headers=site.sub.bearer).json["jobs"][0]["sight"]
    site.give([site.mine, site.other])
    after = site.sub.client.get("/api/jobs", headers=site.sub.bearer).json["jobs"][0]["sight"]
    assert before != after and kinds(site.fetched()[0]).count("walk") == 2


def test_members_of_no_firm_see_the_whole_job_as_they_always_did(site):
    page = site.inspector.pull().json
    assert len(page["entries"]) == 9 and not page["more"]


def test_an_area_taken_away_is_not_sent_again(site):
    site.give([])
    assert kinds(site.fetched()[0]) == ["job"]
