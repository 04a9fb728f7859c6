"""Pulling: everything of one's own jobs, nothing of others', by a cursor that misses nothing."""

import pytest

from inspect_app.entry.jws import verify
from inspect_app.entry.statement import parse_statement
from inspect_app.web.page import BYTES
from tests.phone import new_uuid


def pulled(phone, **asked):
    """Every page until there is no more."""
    entries, after = [], 0
    while True:
        page = phone.pull(after, **asked).json
        entries += page["entries"]
        after = page["next"]
        if not page["more"]:
            return entries


def test_what_one_phone_sends_another_gets_with_the_same_receipt(any_office):
    fay = any_office.phone("fay", "foreman")
    job, chief = any_office.job(fay.person.id)
    sent = [chief.entry("area", job) for _ in range(7)]
    receipts = [answer["receipt"] for answer in chief.send(*sent).json["answers"]]
    got = pulled(fay, limit=3)
    assert [item["entry"] for item in got][1:] == sent
    assert [item["receipt"] for item in got][1:] == receipts
    for item in got:
        receipt = parse_statement(item["receipt"])
        verify(receipt, any_office.parts.server_key.jwk)
        assert receipt.payload["seq"] == item["seq"]


def test_people_see_the_jobs_they_belong_to_and_no_others(any_office):
    fay, gil = any_office.phone("fay", "foreman"), any_office.phone("gil", "foreman")
    one, _chief = any_office.job(fay.person.id)
    two, _other = any_office.job(gil.person.id)
    for phone, job in ((fay, one), (gil, two)):
        assert [item["id"] for item in phone.client.get("/api/jobs", headers=phone.bearer).json["jobs"]] == [
            job
        ]
        assert len(pulled(phone)) == 1
    assert fay.pull(job=two).status_code == 404
    assert fay.pull(job=new_uuid()).json["error"] | {"value": ""} == fay.pull(job=two).json["error"] | {
        "value": ""
    }


def test_somebody_who_joins_later_gets_what_is_older_than_their_cursor(any_office):
    fay = any_office.phone("fay", "foreman")
    early, _chief = any_office.job()
    _own, _ = any_office.job(fay.person.id)
    cursor = fay.pull().json["next"]
    with any_office.app.app_context():
        any_office.parts.membership.join(fay.person.id, early)
    assert fay.pull(cursor).json["entries"] == []
    assert len(fay.pull(0, job=early).json["entries"]) == 1


def test_a_page_is_never_larger_than_a_phone_can_take_in_one_go(any_office):
    job, chief = any_office.job()
    long = {"later": "x" * 45_000}
    for _ in range(3):
        chief.send(*[chief.entry("area", job, body=long) for _ in range(10)])
    page = chief.pull(limit=500).json
    assert page["more"] and sum(len(item["entry"]) for item in page["entries"]) <= BYTES
    assert len(pulled(chief, limit=500)) == 31


@pytest.mark.parametrize(
    ("asked", "field"),
    [({"after": "-1"}, "after"), ({"after": "x"}, "after"), ({"after": str(2**60)}, "after"),
     ({"limit": "0"}, "limit"), ({"limit": "501"}, "limit"), ({"job": "x"}, "job"), ({"job": "a'--"}, "job")],
)  # fmt: skip
def test_a_cursor_that_makes_no_sense_is_named(office, asked, field):
    _, chief = office.job()
    reply = chief.client.get("/api/entries", query_string=asked, headers=chief.bearer)
    error = reply.json["error"]
    assert (reply.status_code, error["code"], error["field"]) == (400, "field_wrong", field)
    assert error["value"] == asked[field]


def test_a_batch_over_the_limits_is_refused_before_anything_is_read(office):
    _job, chief = office.job()
    reply = chief.send(*["x"] * 101)
    assert (reply.status_code, reply.json["error"]["code"]) == (400, "too_many")
    reply = chief.send("x" * 1_200_000)
    assert (reply.status_code, reply.json["error"]["code"]) == (413, "too_large")
    assert len(chief.pull().json["entries"]) == 1


def test_a_revoked_key_may_deliver_but_not_read(office):
    fay = office.phone("fay", "foreman")
    job, _ = office.job(fay.person.id)
    with office.app.app_context():
        office.parts.devices.revoke(fay.kid, "server")
    assert fay.get_token().json["scope"] == "quarantine"
    assert fay.send(fay.entry("area", job)).json["answers"][0]["status"] == "quarantined"
    for address in ("/api/entries", "/api/jobs", "/photos/" + "0" * 64 + f"?job={job}"):
        reply = fay.client.get(address, headers=fay.bearer)
        assert reply.status_code in (401, 403), address


def test_the_answers_words_are_in_the_language_of_the_phone(office):
    _job, chief = office.job()
    english = chief.send("x").json["answers"][0]
    spanish = chief.send("x", **{"Accept-Language": "es-MX,es;q=0.9"}).json["answers"][0]
    assert english["code"] == spanish["code"] == "malformed"
    assert english["message"] != spanish["message"]


def test_a_job_says_its_name_and_its_people_with_their_keys(any_office):
    fay = any_office.phone("fay", "foreman")
    job, chief = any_office.job(fay.person.id)
    chief.send(chief.job(job, name="Boathouse, renamed", metal_range_source="x"))
    told = fay.client.get("/api/jobs", headers=fay.bearer).json["jobs"]
    assert [(item["id"], len(item["people"])) for item in told] == [(job, 2)]
    kids = {person["id"]: person["kids"] for person in told[0]["people"]}
    assert kids == {fay.person.id: [fay.kid], chief.person.id: [chief.kid]}
    assert told[0]["name"] in ("Boathouse (invented)", "Boathouse, renamed")


def test_a_name_that_was_corrected_is_the_one_told(office):
    from inspect_app.entry.format import parse

    chief = office.phone("chief", "administrator")
    job = new_uuid()
    first = chief.job(job)
    chief.send(first, chief.entry("job", job, job, {"name": "Corrected"}, replaces=[parse(first).digest]))
    assert chief.client.get("/api/jobs", headers=chief.bearer).json["jobs"][0]["name"] == "Corrected"


def test_the_manifest_of_a_phone_is_kept_until_its_next_one(any_office):
    fay = any_office.phone("fay", "foreman")
    item = {"what": "entry", "job": new_uuid(), "name": "A" * 43, "size": 900}
    for items in ([item, item], [item]):
        given = {"items": items, "oldest": "2026-11-25T16:40:05.120-05:00"}
        assert fay.client.post("/api/manifest", json=given, headers=fay.bearer).status_code == 200
    with any_office.app.app_context():
        kept = any_office.parts.manifests.of([fay.kid])
    assert [(manifest.kid, names(manifest)) for manifest in kept] == [(fay.kid, ["A" * 43])]


def test_a_long_manifest_comes_in_parts_and_the_next_whole_one_takes_their_place(office):
    fay, job = office.phone("fay", "foreman"), new_uuid()
    for some, more in (("AB", False), ("BC", True), ("D", True), ("", True), ("E", False)):
        items = [{"what": "entry", "job": job, "name": one * 43, "size": 900} for one in some]
        given = {"items": items, "oldest": None, "more": more}
        assert fay.client.post("/api/manifest", json=given, headers=fay.bearer).status_code == 200
        with office.app.app_context():
            kept = names(office.parts.manifests.of([fay.kid])[0])
        assert kept == [one * 43 for one in {"AB": "AB", "BC": "ABC", "D": "ABCD", "": "ABCD", "E": "E"}[some]]


def names(manifest):
    return [one["name"] for one in manifest.items]


def test_a_manifest_with_a_mistake_names_the_item(office):
    fay = office.phone("fay", "foreman")
    items = [{"what": "entry", "job": new_uuid(), "name": "A" * 43, "size": size} for size in (1, "large")]
    reply = fay.client.post("/api/manifest", json={"items": items}, headers=fay.bearer)
    assert (reply.status_code, reply.json["error"]["field"]) == (400, "items[1].size")
    assert reply.json["error"]["value"] == "large"
