"""A server that serves the invented scenario's job, can be stopped and started again, and makes reports."""

import threading
from dataclasses import replace
from pathlib import Path

from inspect_app.application import create_serving_app
from inspect_app.demo.run import SCENARIO
from inspect_app.intake.job_file import read_yaml
from inspect_app.intake.register_job import register_job
from inspect_app.settings import settings_from
from inspect_app.web.listening import listening, stop
from tests.begun import begun
from tests.browser.gate import free_port
from tests.office import CHEAP

PASSWORD = "an invented password"


class Roof:
    """``url``, ``job``; people sign in as ``foreman`` and ``inspector`` with PASSWORD. ``checklists``: a folder of
    them in place of the released ones; ``areas``: of the scenario's file, in place of its own."""

    def __init__(self, folder: Path, checklists: Path | None = None, areas: dict | None = None) -> None:
        settings = settings_from({"SEAMWALK_DATA": str(folder)})
        settings = replace(settings, checklists=checklists or settings.checklists)
        begun(folder)
        self.app = create_serving_app(settings, hasher=CHEAP)
        self.parts = self.app.extensions["seamwalk"]
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}"
        self.server = None
        with self.app.app_context():
            page = read_yaml(SCENARIO.read_text("utf-8"))
            page["areas"] = areas or page["areas"]
            people = {one["login"]: self.parts.accounts.add(one["login"], one["name"], one["role"], PASSWORD)
                      for one in page["people"]}  # fmt: skip
            self.job = register_job(page, people["office"], self.parts.definitions.newest(), self.parts.devices,
                                    self.parts.batches, self.parts.new_id, self.parts.clock())  # fmt: skip
            for person in people.values():
                self.parts.membership.join(person.id, self.job)

    def start(self) -> None:
        self.server = listening(self.app, "127.0.0.1", self.port)
        threading.Thread(target=self.server.run, daemon=True).start()

    def stop(self) -> None:
        if self.server is not None:
            stop(self.server)
            self.server = None

    def kinds(self) -> list[str]:
        """The kinds of all entries held, in server order."""
        from inspect_app.entry.format import parse

        with self.app.app_context():
            return [parse(one.token).kind for one in self.parts.reading.job_entries(self.job)]

    def record(self) -> dict:
        with self.app.app_context():
            return self.parts.records.record(self.job)
