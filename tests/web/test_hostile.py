"""Hostile requests over the whole API, made from its own document by an outside generator (schemathesis): whatever is
sent, the answer is one of ours, and what was recorded stays."""

import os
from pathlib import Path
from typing import Any

import pytest
import schemathesis
from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st
from hypothesis.errors import Unsatisfiable
from schemathesis import GenerationMode
from schemathesis.config import SchemathesisConfig

from tests.office import Office

SEED = int(os.environ.get("SEED") or 5)


@schemathesis.serializer("application/offset+octet-stream", "application/x-tar", "application/pdf")
def piece(ctx: Any, value: Any) -> bytes:
    """A piece of an upload (tus 1.0.0), a saved copy: bytes, whatever they are."""
    return value if isinstance(value, bytes) else repr(value).encode("utf-8", "surrogatepass")


class Siege:
    """An office with a job, its chief's token and cookie, and the operations of its document."""

    def __init__(self, folder: Path) -> None:
        self.office = Office(folder / "data")
        self.job, self.chief = self.office.job()
        self.held = self.log()
        self.schema = schemathesis.openapi.from_wsgi("/api/openapi.json", self.office.app, config=SchemathesisConfig())

    def log(self) -> list[str]:
        with self.office.app.app_context():
            return [one.token for one in self.office.parts.reading.job_entries(self.job)]

    def operations(self) -> list[Any]:
        return sorted((one.ok() for one in self.schema.get_all_operations()), key=lambda one: one.label)

    def send(self, case: Any, who: str) -> Any:
        """As the case says, by nobody, by the chief's phone or by the chief's page; these ask of their own job, so that
        more is reached."""
        if who != "nobody" and "job" in (case.path_parameters or {}):
            case.path_parameters["job"] = self.job
        cookie = self.chief.client.get_cookie("seamwalk")
        page = {"Cookie": f"seamwalk={cookie.value}", "X-Seamwalk-Csrf": self.chief.csrf}
        return case.call(headers={"nobody": {}, "phone": self.chief.bearer, "page": page}[who])


@pytest.fixture
def siege(tmp_path: Path) -> Siege:
    return Siege(tmp_path)


def besiege(siege: Siege, examples: int) -> int:
    """Requests sent, over all operations. ``AssertionError`` names the first that the server did not bear."""
    sent = 0
    for operation in siege.operations():
        for mode in (GenerationMode.POSITIVE, GenerationMode.NEGATIVE):
            if mode is GenerationMode.NEGATIVE and not any(operation.iter_parameters()) and not operation.body:
                continue  # nothing of this call can be wrong
            cases = operation.as_strategy(generation_mode=mode)

            @seed(SEED)
            @settings(
                max_examples=examples, deadline=None, database=None, phases=[Phase.generate],
                suppress_health_check=list(HealthCheck),
            )  # fmt: skip
            @given(case=cases, who=st.sampled_from(["nobody", "phone", "page"]))
            def one(case: Any, who: str) -> None:
                nonlocal sent
                sent += 1
                answer = siege.send(case, who)
                assert answer.status_code < 500, f"{who}: {answer.status_code} for {case.as_curl_command()}"
                if answer.status_code >= 400 and case.method != "HEAD" and answer.content:
                    error = answer.json()["error"]
                    assert error["message"] and error["way_out"], f"{case.as_curl_command()}: {error}"

            try:
                one()
            except Unsatisfiable:
                assert mode is GenerationMode.NEGATIVE, operation.label
    assert siege.log()[: len(siege.held)] == siege.held, "what was recorded stays, in its order"
    return sent


def test_no_request_of_the_documents_making_is_too_much_for_the_server(siege: Siege) -> None:
    assert besiege(siege, 2) > 60


@pytest.mark.soak
def test_hundreds_of_requests_to_each_call_are_borne(siege: Siege, capsys: Any) -> None:
    sent = besiege(siege, 200)
    with capsys.disabled():
        print(f"\n  {sent} hostile requests over the whole API, none of them a server error")
