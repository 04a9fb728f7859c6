"""The package over HTTP: whole with its exact length, gone on with after a break, for those alone who see the job."""

import io
import zipfile
from typing import Any

import pytest

from tests.office import PASSWORD
from tests.upkeep.filled import SHA, Filled


@pytest.fixture(scope="module")
def told(still: Filled) -> Any:
    """What the office says of the package of a job that no test changes."""
    reply = still.chief.client.get(f"/api/jobs/{still.job}/package", headers=still.chief.bearer)
    assert reply.status_code == 200
    return reply.json


def fetched(still: Filled, url: str, **headers: str) -> Any:
    return still.office.client().get(url, headers=headers)


def test_the_address_gives_a_zip_file_of_exactly_the_length_that_was_told(still, told):
    reply = fetched(still, told["url"])
    assert reply.status_code == 200 and reply.mimetype == "application/zip"
    assert int(reply.headers["Content-Length"]) == len(reply.data) == told["bytes"]
    assert told["name"] in reply.headers["Content-Disposition"]
    with zipfile.ZipFile(io.BytesIO(reply.data)) as archive:
        assert archive.testzip() is None and f"{told['name']}/data/photos/{SHA}.jpg" in archive.namelist()
    assert (told["counts"]["photos"], told["counts"]["missing_photos"]) == (1, 0)


def test_a_broken_download_goes_on_where_it_stopped_and_gives_the_same_file(still, told):
    whole = fetched(still, told["url"])
    for start in (1, 700, told["bytes"] - 1):
        rest = fetched(still, told["url"], Range=f"bytes={start}-", **{"If-Range": whole.headers["ETag"]})
        assert rest.status_code == 206 and whole.data[:start] + rest.data == whole.data
        assert rest.headers["Content-Range"] == f"bytes {start}-{told['bytes'] - 1}/{told['bytes']}"
    part = fetched(still, told["url"], Range="bytes=10-19")
    assert part.data == whole.data[10:20] and part.headers["Content-Length"] == "10"
    assert fetched(still, told["url"], Range="bytes=-7").data == whole.data[-7:]
    assert fetched(still, told["url"], Range=f"bytes={told['bytes']}-").status_code == 416
    for unfit in ('""', f"W/{whole.headers['ETag']}", '"another"', "Sat, 28 Nov 2026 09:30:15 GMT"):
        assert fetched(still, told["url"], Range="bytes=10-19", **{"If-Range": unfit}).status_code == 200, unfit
    for other in ("bytes=0-1,4-5", "lines=1-2", "nonsense"):
        assert fetched(still, told["url"], Range=other).status_code == 200


def test_what_stands_otherwise_by_now_is_sent_whole_and_never_pieced_together(office):
    filled = Filled(office)
    url = filled.chief.client.get(f"/api/jobs/{filled.job}/package", headers=filled.chief.bearer).json["url"]
    before = fetched(filled, url)
    filled.chief.send(filled.chief.entry("area", filled.job))
    for named in ({"If-Range": before.headers["ETag"]}, {}):
        rest = fetched(filled, url, Range="bytes=1000-", **named)
        assert rest.status_code == 200 and rest.headers["ETag"] != before.headers["ETag"], "begun anew"
    now = {"If-Range": rest.headers["ETag"]}
    assert rest.data[1000:] == fetched(filled, url, Range="bytes=1000-", **now).data


def test_a_member_who_sees_the_whole_job_needs_no_pass(still):
    address = f"/api/jobs/{still.job}/package.zip"
    assert still.foreman.client.get(address, headers=still.foreman.bearer).status_code == 200
    assert still.foreman.client.get(address, headers={"Range": "bytes=5-"}).status_code == 200  # another moment's bytes
    assert still.office.client().get(address).status_code == 401


def test_a_pass_opens_its_own_job_for_as_long_as_its_person_may(office):
    filled = Filled(office)
    other, _ = office.job()
    url = filled.foreman.client.get(f"/api/jobs/{filled.job}/package", headers=filled.foreman.bearer).json["url"]
    assert fetched(filled, url.replace(filled.job, other)).status_code == 404
    at = url.index("pass=") + 9
    forged = url[:at] + ("A" if url[at] != "A" else "B") + url[at + 1 :]
    for wrong in (forged, url[:-1], url.split("=")[0] + "="):
        refused = fetched(filled, wrong)
        assert refused.status_code == 403 and refused.json["error"]["code"] == "package_pass"
    assert fetched(filled, url).status_code == 200
    office.clock.forward(hours=13)
    assert fetched(filled, url).json["error"]["code"] == "package_pass"


def test_a_pass_ends_with_the_phone_that_may_hold_it(office):
    filled = Filled(office)
    asked = f"/api/jobs/{filled.job}/package"
    url = filled.foreman.client.get(asked, headers=filled.foreman.bearer).json["url"]
    of_another = filled.chief.client.get(asked, headers=filled.chief.bearer).json["url"]
    with office.app.app_context():
        office.parts.devices.revoke(filled.foreman.kid, "server")
    refused = fetched(filled, url)
    assert (refused.status_code, refused.json["error"]["code"]) == (403, "package_pass")
    assert fetched(filled, of_another).status_code == 200
    office.clock.forward(hours=1)
    again = office.phone("fran", "foreman", filled.job)
    assert fetched(filled, again.client.get(asked, headers=again.bearer).json["url"]).status_code == 200


def test_whose_firm_sees_areas_only_gets_no_package_by_any_way(office):
    filled = Filled(office)
    sub = office.phone("sue", "foreman", filled.job)
    url = sub.client.get(f"/api/jobs/{filled.job}/package", headers=sub.bearer).json["url"]
    with office.app.app_context():
        firms = office.app.extensions["office"].firms
        firm = firms.join(filled.job, "Sub (invented)", "sub", [])
        office.parts.membership.place(sub.person.id, filled.job, firm.id)
    for address in (f"/api/jobs/{filled.job}/package", f"/api/jobs/{filled.job}/package.zip"):
        assert sub.client.get(address, headers=sub.bearer).status_code == 403
    assert fetched(filled, url).status_code == 403


def test_each_download_stands_in_the_trail_and_a_look_at_the_size_does_not(office):
    filled = Filled(office)
    url = filled.chief.client.get(f"/api/jobs/{filled.job}/package", headers=filled.chief.bearer).json["url"]
    filled.office.client().head(url)

    def steps() -> list[Any]:
        listed = filled.chief.client.get(f"/api/jobs/{filled.job}/trail", headers=filled.chief.bearer).json
        return [step for step in listed if step["what"] == "packaged"]

    assert steps() == []
    fetched(filled, url, Range="bytes=999999999-")
    assert steps() == [], "nothing was sent"
    fetched(filled, url)
    for start in (700, 1400, 2100):
        assert fetched(filled, url, Range=f"bytes={start}-{start + 699}").status_code == 206
    assert [step["person"] for step in steps()] == [filled.chief.person.id], "one for a download, however many pieces"
    office.clock.forward(minutes=30)
    fetched(filled, url, Range="bytes=2800-")
    assert len(steps()) == 1
    fetched(filled, url, Range="bytes=0-9")
    assert len(steps()) == 2, "another download"


def test_a_download_that_never_asks_for_the_first_byte_stands_in_the_trail_all_the_same(office):
    filled = Filled(office)
    url = filled.chief.client.get(f"/api/jobs/{filled.job}/package", headers=filled.chief.bearer).json["url"]
    link = filled.chief.client.post(f"/api/jobs/{filled.job}/links", json={"name": "Reviewer (invented)", "days": 3},
                                    headers=filled.chief.bearer).json["url"]  # fmt: skip
    page = office.client().get(link).text
    address = page.split('package.zip?pass=')[1].split('"')[0]
    whole = office.client().get(f"{link}/package.zip?pass={address}", headers={"Range": "bytes=1-"})
    assert whole.status_code == 200, "nobody kept what a page's package was: it is sent whole"
    named = {"Range": "bytes=1-", "If-Range": whole.headers["ETag"]}
    for _ in range(2):
        assert fetched(filled, url, Range="bytes=1-").status_code == 206
        assert office.client().get(f"{link}/package.zip?pass={address}", headers=named).status_code == 206
        office.clock.forward(hours=2)
    with office.app.app_context():
        steps = office.app.extensions["office"].trail.of(filled.job)
    packaged = [step.person for step in steps if step.what == "packaged"]
    assert sorted(packaged, key=str) == sorted([filled.chief.person.id, None], key=str)


def test_a_sign_in_by_cookie_is_enough(still):
    assert still.foreman.sign_in(PASSWORD).status_code == 200
    assert still.foreman.client.get(f"/api/jobs/{still.job}/package.zip").status_code == 200
