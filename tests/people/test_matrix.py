"""Every route, asked by everybody: what it answers is what ``matrix.txt`` says, and nothing leaks beside it."""

import re
from collections.abc import Iterator

import pytest

from tests.office import Office
from tests.people.asks import Asking
from tests.people.matrix import FILE, Row, calls, printed, read
from tests.people.world import ASKERS, World

TEXT = FILE.read_text("utf-8")
ROWS = read(TEXT)
ENTITLED = re.compile(r"<secret>")  # the link itself is the right to what it shows


@pytest.fixture(scope="module")
def asking(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Asking]:
    yield Asking(World(Office(tmp_path_factory.mktemp("matrix") / "data")))


@pytest.fixture(scope="module")
def answers(asking: Asking) -> dict[Row, dict[str, tuple[str, bytes]]]:
    return {row: {asker: asking.status(asker, *row[:3]) for asker in ASKERS} for row in ROWS}


def test_every_route_has_its_row_and_every_row_its_route(asking):
    rows = {(row.method, row.rule) for row in ROWS}
    assert calls(asking.app) - rows == set(), "a new route needs a row in tests/people/matrix.txt"
    assert rows - calls(asking.app) == set()


def test_every_answer_is_the_one_that_the_matrix_says(answers):
    wrong = {
        (asker, row.method, row.rule, row.case): (said, told[asker][0])
        for row, told in answers.items()
        for asker, said in zip(ASKERS, row.cells, strict=True)
        if said != told[asker][0]
    }
    assert wrong == {}


def test_no_answer_holds_what_its_asker_may_not_know(asking, answers):
    leaks = [
        (asker, row.method, row.rule, row.case, secret[:40])
        for row, told in answers.items() if not ENTITLED.search(row.rule)
        for asker in ASKERS
        for secret in asking.world.secrets(asker) if secret in told[asker][1]
    ]  # fmt: skip
    assert leaks == []


def test_the_secrets_are_such_as_somebody_is_told(asking, answers):
    """Else the test above would find nothing whatever leaked."""
    told = b"".join(body for row in answers.values() for _, body in row.values())
    missing = {secret for asker in ASKERS for secret in asking.world.secrets(asker) if secret not in told}
    assert missing <= {asking.world.apart.encode()}


def test_a_stranger_cannot_tell_a_job_that_is_there_from_one_that_is_not(answers):
    for row, told in answers.items():
        if "<job>" in row.rule:
            assert told["stranger"][0] == "404" and b"job_unknown" in told["stranger"][1], row.rule


def test_the_file_is_as_it_is_printed():
    assert [line for line in TEXT.splitlines() if not line.startswith("#")] == printed(ROWS)[1:]
    assert printed(ROWS)[0] in TEXT.splitlines()


def test_every_change_by_cookie_wants_the_token_that_no_other_site_has(asking):
    for row in ROWS:
        if row.method == "GET" or row.rule.startswith(("/api/photos", "/api/entries", "/api/manifest", "/pack")):
            continue
        if row.rule in ("/api/delivery", "/api/devices/again", "/api/tickets", "/api/qr"):
            continue
        with asking.app.app_context():
            ask = asking.ask("administrator", row.method, row.rule, row.case)
        if row.rule == "/api/invitations/<secret>" and row.case in ("used", "withdrawn", "expired", "unknown"):
            continue
        client, _ = asking._client("administrator", row.rule, row.case)
        path = row.rule
        for name, value in ask.path.items():
            path = path.replace(f"<{name}>", value)
        for headers in ({}, {"X-Seamwalk-Csrf": "forged"}):
            reply = client.open(path, method=row.method, json=ask.body, headers=headers)
            assert reply.status_code == 403 and reply.json["error"]["code"] == "csrf", (row.method, row.rule)
