"""Invitations and reviewers' links: once, until a day, unless withdrawn; the secret is told once and kept nowhere."""

import threading

import pytest
from sqlalchemy import text

from tests.office import PASSWORD


class Desk:
    """A job with its administrator, a firm that sees one area, and whoever comes by with a link."""

    def __init__(self, office):
        self.office = office
        self.job, self.chief = office.job()
        self.csrf = {"X-Seamwalk-Csrf": self.chief.csrf}
        self.firm = self.say("POST", "firms", {"name": "Gannet (invented)", "side": "sub", "areas": []}).json["id"]

    def say(self, method, what, body=None):
        return self.chief.client.open(f"/api/jobs/{self.job}/{what}", method=method, json=body, headers=self.csrf)

    def invite(self, role="foreman", **more):
        reply = self.say("POST", "invitations", {"firm": self.firm, "role": role, "days": 7} | more)
        return reply.json["id"], reply.json["url"].rsplit("/", 1)[1]

    def join(self, secret, login=None, client=None, name="New (invented)", password=PASSWORD):
        client = client or self.office.client()
        csrf = client.get("/api/session").json["csrf"]
        body = {"login": login, "name": name, "password": password} if login else {}
        return client.post(f"/api/invitations/{secret}", json=body, headers={"X-Seamwalk-Csrf": csrf})


@pytest.fixture
def desk(office):
    return Desk(office)


@pytest.fixture
def any_desk(any_office):
    """On each database that Seamwalk runs on: where it decides."""
    return Desk(any_office)


def code(reply):
    return reply.status_code, reply.json["error"]["code"]


def test_an_invitation_makes_one_account_in_its_firm_and_signs_it_in(any_desk):
    _, secret = any_desk.invite()
    told = any_desk.office.client().get(f"/api/invitations/{secret}").json
    assert (told["job_name"], told["firm"], told["role"]) == ("Boathouse (invented)", "Gannet (invented)", "foreman")
    client = any_desk.office.client()
    joined = any_desk.join(secret, "nell", client)
    assert joined.status_code == 201 and client.get("/api/session").json["person"]["name"] == "New (invented)"
    people = client.get(f"/api/jobs/{any_desk.job}/people").json
    assert [firm["name"] for firm in people["firms"]] == ["Gannet (invented)"] and people["rights"]["sees"] == "areas"
    assert code(any_desk.join(secret, "nils")) == (410, "invitation_used")
    assert code(any_desk.office.client().get(f"/api/invitations/{secret}")) == (410, "invitation_used")


def test_of_two_who_bring_it_at_once_one_joins(any_desk):
    _, secret = any_desk.invite()
    replies = []

    def come(at):
        replies.append(any_desk.join(secret, f"racer{at}"))

    calls = [threading.Thread(target=come, args=(at,)) for at in range(4)]
    for call in calls:
        call.start()
    for call in calls:
        call.join()
    assert sorted(reply.status_code for reply in replies) == [201, 410, 410, 410]
    with any_desk.office.app.app_context():
        assert len([one for one in any_desk.office.parts.accounts.everybody() if one.login.startswith("racer")]) == 1


def test_it_ends_with_its_day_and_when_it_is_withdrawn(desk):
    _, late = desk.invite(days=1)
    id, withdrawn = desk.invite()
    assert desk.say("DELETE", f"invitations/{id}").status_code == 200
    assert desk.say("DELETE", f"invitations/{id}").status_code == 200
    assert code(desk.join(withdrawn, "nell")) == (410, "invitation_withdrawn")
    desk.office.clock.forward(days=1)
    assert code(desk.join(late, "nell")) == (410, "invitation_expired")
    states = {one["state"] for one in desk.say("GET", "people").json["invitations"]}
    assert states == {"withdrawn", "expired"}


def test_what_goes_wrong_while_joining_uses_nothing_up(desk):
    _, secret = desk.invite()
    desk.office.add("taken", "foreman")
    assert code(desk.join(secret, "taken")) == (409, "invitation_login_taken")
    assert code(desk.join(secret, "nell", password="short")) == (400, "bad_password_length")
    assert code(desk.join(secret, "nell", name=" ")) == (400, "bad_text")
    assert desk.join(secret, "nell").status_code == 201


def test_somebody_of_another_role_or_firm_does_not_slip_in_by_it(desk):
    admin = desk.office.phone("other", "administrator")
    _, secret = desk.invite()
    assert code(desk.join(secret, client=admin.client)) == (409, "invitation_other_role")
    _, mine = desk.invite()
    foreman = desk.office.phone("fay", "foreman")
    assert desk.join(mine, client=foreman.client).status_code == 201
    other = desk.say("POST", "firms", {"name": "Dunlin (invented)", "side": "contractor", "areas": None}).json["id"]
    _, whole = desk.invite(firm=other)
    assert code(desk.join(whole, client=foreman.client)) == (409, "invitation_other_firm")


def test_nobody_makes_an_administrator_of_a_part(desk):
    reply = desk.say("POST", "invitations", {"firm": desk.firm, "role": "administrator", "days": 1})
    assert code(reply) == (409, "administrator_of_areas")


def test_neither_secret_is_kept_anywhere(desk):
    _, secret = desk.invite()
    link = desk.say("POST", "links", {"name": "Reviewer", "days": 1}).json["url"].rsplit("/", 1)[1]
    with desk.office.app.app_context(), desk.office.parts.transactions.reading() as session:
        kept = [row for table in ("invitation", "viewer_link", "trail")
                for row in session.execute(text(f"SELECT * FROM {table}")).all()]  # fmt: skip
    assert len(kept) > 4 and not any(one in str(kept) for one in (secret, link))


def test_an_invitation_of_another_job_is_not_withdrawn_from_here(desk):
    other, chief = desk.office.job()
    id, secret = desk.invite()
    headers = {"X-Seamwalk-Csrf": chief.csrf}
    reply = chief.client.delete(f"/api/jobs/{other}/invitations/{id}", headers=headers)
    assert code(reply) == (404, "invitation_unknown")
    assert desk.join(secret, "nell").status_code == 201


def test_who_tries_many_links_has_to_wait_and_is_told_how_long(desk):
    client = desk.office.client()
    codes = [client.get(f"/api/invitations/{at:043d}").status_code for at in range(30)]
    assert codes[0] == 404 and codes[-1] == 429
    _, secret = desk.invite()
    waits = client.get(f"/api/invitations/{secret}")
    assert waits.status_code == 429 and int(waits.headers["Retry-After"]) > 0
    assert f"Wait {waits.headers['Retry-After']} seconds" in waits.json["error"]["way_out"]
    assert client.get(f"/api/invitations/{secret}", environ_base={"REMOTE_ADDR": "10.9.9.9"}).status_code == 200
    desk.office.clock.forward(seconds=301)
    assert client.get(f"/api/invitations/{secret}").status_code == 200


def test_a_link_shows_one_job_without_script_counts_its_visits_and_ends(desk):
    made = desk.say("POST", "links", {"name": "<b>Owen</b> (invented)", "days": 30}).json
    client = desk.office.client()
    page = client.get(made["url"], headers={"Accept-Language": "es"})
    assert page.status_code == 200 and "<script" not in page.text
    assert "&lt;b&gt;Owen" in page.text and "<b>Owen" not in page.text
    policy = page.headers["Content-Security-Policy"]
    assert "default-src 'none'" in policy and "script" not in policy and "Set-Cookie" not in page.headers
    assert page.headers["Cache-Control"] == "no-store" and page.headers["Referrer-Policy"] == "no-referrer"
    tokens = client.get(made["url"] + "/entries.txt").text.splitlines()
    with desk.office.app.app_context():
        assert tokens == [one.token for one in desk.office.parts.reading.job_entries(desk.job)]
    assert client.get(made["url"] + "/report.pdf").status_code == 404
    assert desk.say("GET", "people").json["links"][0]["seen"] == 1
    steps = [(one["what"], one["who"]) for one in desk.say("GET", "trail").json]
    assert steps[:3] == [("report_seen", None), ("exported", None), ("link_seen", None)]
    for _ in range(20):
        assert client.get(made["url"]).status_code == 200
        assert client.get(f"{made['url']}/photos/{'0' * 64}").status_code == 404
    assert len(desk.say("GET", "trail").json) == len(steps), "one visit, however often the page is read within the hour"
    desk.office.clock.forward(minutes=61)
    assert client.get(made["url"]).status_code == 200
    assert len(desk.say("GET", "trail").json) == len(steps) + 1
    assert desk.say("GET", "people").json["links"][0]["seen"] == 22
    assert desk.say("DELETE", f"links/{made['id']}").status_code == 200
    assert client.get(made["url"]).status_code == 410 and "withdrawn" in client.get(made["url"]).text

def test_a_job_keeps_an_administrator_who_sees_all_of_it(desk):
    whole = {"name": "Dunlin (invented)", "side": "contractor", "areas": None}
    firm = desk.say("POST", "firms", whole).json["id"]
    _, secret = desk.invite(role="administrator", firm=firm)
    assert desk.say("POST", "firms", whole | {"areas": []}).status_code == 200
    assert code(desk.join(secret, "nell")) == (409, "administrator_of_areas")
    assert desk.say("POST", "firms", whole).status_code == 200 and desk.join(secret, "nell").status_code == 201
    assert code(desk.say("POST", "firms", whole | {"areas": []})) == (409, "administrator_of_areas")


def test_other_capitals_and_blanks_make_no_other_firm_that_what_is_assigned_to_this_one_shows_itself_to(desk):
    again = desk.say("POST", "firms", {"name": "GANNET  (Invented)", "side": "sub", "areas": []}).json
    assert (again["id"], again["name"]) == (desk.firm, "Gannet (invented)")
