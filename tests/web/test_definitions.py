"""Definitions over HTTP: listed, and served as the bytes whose digest they are asked by."""

import hashlib

from inspect_app.entry.base64url import encode


def test_every_listed_definition_is_served_under_its_digest(office):
    listed = office.client().get("/api/definitions").json
    assert [sorted(item) for item in listed] == [["digest", "id", "version"]] * len(listed)
    for item in listed:
        reply = office.client().get(f"/api/definitions/{item['digest']}")
        assert encode(hashlib.sha256(reply.data).digest()) == item["digest"]
        assert (reply.json["id"], reply.json["version"]) == (item["id"], item["version"])
        assert "immutable" in reply.headers["Cache-Control"]


def test_a_definition_of_an_earlier_release_is_still_served(office):
    data = b'{"id":"gone","version":1}'
    digest = encode(hashlib.sha256(data).digest())
    with office.app.app_context():
        office.parts.archive.keep({digest: data})
    again = office.again()
    assert again.client().get(f"/api/definitions/{digest}").data == data


def test_an_unknown_digest_is_named(office):
    reply = office.client().get("/api/definitions/" + "A" * 43)
    assert (reply.status_code, reply.json["error"]["code"]) == (404, "definition_unknown")
    assert reply.json["error"]["value"] == "A" * 43
