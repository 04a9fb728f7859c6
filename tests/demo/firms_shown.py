"""What the demonstration shows of firms and people: a sub who sees her area, a lost phone's work let in, a link."""

import json

from inspect_app.demo.firms import NOTE
from inspect_app.entry.format import parse


def shows_its_people(folder, app):
    """Five firms, seven people; one invitation used, one link open, one phone revoked and what it held let in."""
    note = json.loads((folder / "demonstration.json").read_text("utf-8"))
    job, people = note["job"], {person["login"]: person for person in note["people"]}
    parts, office = app.extensions["seamwalk"], app.extensions["office"]
    assert len(people) >= 5 and all("(invented)" in person["name"] for person in people.values())
    with app.app_context():
        firms = office.firms.of(job)
        assert len(firms) >= 3 and [firm.side for firm in firms if firm.areas] == ["sub"]
        owners = {firm.id for firm in firms if firm.side == "owner"}
        owner = parts.accounts.by_login("owner").id
        assert people["owner"]["role"] == "owner" and office.firms.people(job)[owner] in owners
        assert office.scope.name(job, owner) == "", "the whole job"
        (invitation,) = office.invitations.of(job)
        (link,) = office.links.of(job)
        assert (invitation.state, link.state) == ("used", "open")
        lena = parts.accounts.by_login("sub").id
        lost, new = office.contacts.of([lena], job)
        assert lost.revoked_at and (lost.unsent["entries"], lost.unsent["photos"]) == (0, 0) and not new.revoked_at
        record = parts.records.record(job)
        (admitted,) = [flag for flag in record["flags"] if flag["code"] == "admitted"]
        (finding,) = [one for one in record["findings"].values() if one["opened"]["digest"] == admitted["digest"]]
        assert finding["photos"][0] in parts.reading.photos(job) and parts.quarantine.of(job) == []
        items = office.scope.after(lena, 0, [job], 500)
        areas = {body["name"] for item in items if (entry := parse(item.received.token)).kind == "area"
                 for body in [entry.payload["body"]]}  # fmt: skip
        assert "Ferry slope" in areas and len(areas) < len(record["areas"])  # and of findings given to her
    client = app.test_client()
    page = client.get((folder / NOTE).read_text("utf-8").strip())
    assert page.status_code == 200 and "invented" in page.text
