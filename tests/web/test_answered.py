"""A phone's nonce comes back with every answer, errors and files included; nothing else ever does."""

import pytest

from tests.office import Office

PATHS = ("/api/server", "/api/nonce", "/api/jobs", "/api/none", "/api/photos/" + "0" * 32, "/", "/shell.json")


@pytest.fixture(scope="module")
def client(tmp_path_factory):
    return Office(tmp_path_factory.mktemp("answered")).app.test_client()


@pytest.mark.parametrize("path", PATHS)
@pytest.mark.parametrize("method", ["GET", "HEAD", "PATCH"])
def test_every_answer_brings_the_nonce_back(client, path, method):
    reply = client.open(path, method=method, headers={"Seamwalk-Ask": "a-nonce_OF64" * 5})
    assert reply.headers["Seamwalk-Answer"] == "a-nonce_OF64" * 5, reply.status
    assert "Seamwalk-Answer" not in client.open(path, method=method).headers


@pytest.mark.parametrize("nonce", ["", " ", "a b", "é", "a" * 65, "a,b", "a;b", "<a>"])
def test_what_is_no_nonce_does_not_come_back(client, nonce):
    assert "Seamwalk-Answer" not in client.get("/api/nonce", headers={"Seamwalk-Ask": nonce}).headers
