"""Ready for no signal: nothing is said to be ready that was not proved, and what is missing has a name."""

import hashlib
import shutil
from pathlib import Path

import pytest

from inspect_app.entry.base64url import encode
from tests.browser.office import Office
from tests.browser.phone import Phone
from tests.browser.test_engine_shell import REGISTER

READY = """const { readiness } = await import('/static/shell/ready.js');
  await new Promise((done) => setTimeout(done, 10)); return readiness()"""
KEPT = "return withDb(['meta'], 'readonly', (tx) => tx.store.get(['definition', arg]))"

NO_TICKETS = """return withDb(['meta'], 'readwrite',
  (tx) => tx.store.delete(IDBKeyRange.bound(['ticket'], ['ticket', []])))"""


@pytest.fixture
def pinning(tmp_path: Path):
    """An office whose job pins one definition of the checklists that come with it."""
    probe = Office(tmp_path / "probe")
    listed = probe.app.test_client().get("/api/definitions").json
    first = (listed["definitions"] if isinstance(listed, dict) else listed)[0]
    shutil.rmtree(tmp_path / "probe")
    with Office(tmp_path / "office", definitions={first["id"]: first["digest"]}) as running:
        running.digest = first["digest"]
        yield running


def ready(phone: Phone) -> dict:
    phone.again()
    return phone.run(READY)


def test_each_missing_thing_is_named_until_all_is_there_and_then_it_works_offline(chromium, pinning) -> None:
    context = chromium.new_context()
    phone = Phone(context, pinning.url)
    assert ready(phone)["reason"] == "shell.not_ready.app"
    phone.run(REGISTER)
    assert ready(phone)["reason"] == "shell.not_ready.person"
    phone.sign_in("ann")
    assert ready(phone)["reason"] == "shell.not_ready.job"
    definition = f"/api/definitions/{pinning.digest}"
    pinning.gate.lie = lambda request: "200 without receipt" if request.path == definition else None
    phone.run("await sendNow()")
    told = ready(phone)
    assert (told["ready"], told["reason"]) == (False, "shell.not_ready.definition"), "an altered one is not taken"
    pinning.gate.lie = lambda request: None
    phone.run("await sendNow()")
    assert ready(phone) == {"ready": True, "reason": None, "facts": {}}
    phone.note(pinning.job, "roof")
    phone.run(NO_TICKETS)
    assert ready(phone)["reason"] == "shell.not_ready.tickets", "a day on a roof cannot be planned without one"
    phone.run("await sendNow()")
    assert ready(phone)["ready"]
    text = phone.run(KEPT, pinning.digest)
    assert encode(hashlib.sha256(text.encode()).digest()) == pinning.digest
    pinning.stop()
    page = context.new_page()
    page.goto(pinning.url + "/")
    record = page.evaluate(
        """async (job) => { const load = await import('/static/record/load.js');
          const record = await load.jobRecord(job);
          return [record.job.name, (await load.definitionsOf(job)).length] }""",
        pinning.job,
    )
    assert record == ["Boathouse (invented)", 1]
    context.close()
