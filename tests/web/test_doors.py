"""A walk of every route without credentials, and with those of somebody who belongs to nothing."""



from inspect_app.web.headers import HEADERS
from tests.phone import new_uuid

OPEN = {
    "/api/server", "/api/session", "/api/nonce", "/api/openapi.json", "/api/definitions",
    "/api/definitions/<digest>", "/", "/sw.js", "/shell.json", "/static/<path:name>", "/rulebook/<path:name>",
    "/rulebook.json", "/pack",
}  # fmt: skip
DIGEST, SHA256 = "A" * 43, "0" * 64
BODY = {"entries": [], "name": "n", "side": "sub", "role": "foreman", "firm": new_uuid(), "pkcs12": "AA==",
        "passphrase": "p"}  # fmt: skip


def routes(office, job):
    """``(rule, method, address)`` of every route, with the job's own id and everything else made up."""
    values = {
        "job": job,
        "sha256": SHA256,
        "upload": "0" * 32,
        "digest": DIGEST,
        "name": "nothing",
        "number": 1,
        "identity": 1,
        "kid": "K" * 43,
        "secret": "S" * 43,
        "invitation": "i",
        "link": "l",
        "passkey": "p",
    }
    adapter = office.app.url_map.bind("localhost")
    for rule in office.app.url_map.iter_rules():
        arguments = {name: values[name] for name in rule.arguments}
        for method in sorted(rule.methods - {"OPTIONS"}):
            yield rule.rule, method, adapter.build(rule.endpoint, arguments, method=method)


def secrets_of(office, job, chief):
    with office.app.app_context():
        received = office.parts.reading.job_entries(job)
    return [chief.kid, chief.person.id, chief.person.login, "Boathouse", *(item.token for item in received)]


def asked(client, method, address, job, headers):
    query = {"job": job, "sha256": SHA256}
    return client.open(address, method=method, headers=headers, query_string=query, json=BODY)


def test_without_credentials_every_route_but_the_open_ones_is_shut(office):
    job, chief = office.job()
    secrets = secrets_of(office, job, chief)
    for rule, method, address in routes(office, job):
        for headers in ({}, {"Authorization": "Bearer forged"}, {"Authorization": "Basic YTpi"}):
            reply = asked(office.client(), method, address, job, headers)
            assert not any(secret in reply.text for secret in secrets), (method, rule)
            if rule in OPEN and method in ("GET", "HEAD"):
                assert reply.status_code in (200, 404), (method, rule)
            else:
                assert 400 <= reply.status_code < 500, (method, rule, reply.status_code)


def test_a_stranger_to_the_job_learns_nothing_about_it_not_even_that_it_exists(office):
    job, chief = office.job()
    secrets = secrets_of(office, job, chief)
    eve = office.phone("eve", "administrator")
    for rule, method, address in routes(office, job):
        if rule == "/api/session" and method == "DELETE":
            continue
        reply = asked(eve.client, method, address, job, eve.bearer)
        assert not any(secret in reply.text for secret in secrets), (method, rule)
        if "<job>" in rule:
            absent = new_uuid()
            other = asked(eve.client, method, address.replace(job, absent), absent, eve.bearer)
            assert reply.status_code == other.status_code == 404, (method, rule)
            assert reply.text.replace(job, "") == other.text.replace(absent, "")


def test_every_answer_carries_the_security_headers(office):
    job, _ = office.job()
    for rule, method, address in routes(office, job):
        reply = asked(office.client(), method, address, job, {})
        for name in HEADERS:
            assert name in reply.headers, (method, rule, name)
        assert reply.headers["X-Content-Type-Options"] == "nosniff"
        if address.startswith("/api/"):
            assert "no-store" in reply.headers["Cache-Control"] or reply.status_code == 200, rule


def test_only_our_own_scripts_run(office):
    policy = office.client().get("/").headers["Content-Security-Policy"]
    assert "script-src 'self' 'wasm-unsafe-eval'" in policy and "frame-ancestors 'none'" in policy
    assert "unsafe" not in policy.replace("'wasm-unsafe-eval'", "")
