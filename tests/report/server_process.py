"""A server that makes reports, as a process of its own: ``python -m tests.report.server_process DATA GATE``. Each
report waits, its pages not yet laid out, until there is a file of the name GATE; then it is made as ever."""

import os
import sys
import time
from pathlib import Path
from typing import Any

from inspect_app.application import create_serving_app
from inspect_app.settings import settings_from
from tests.office import CHEAP


def serve(data: str, gate: str) -> None:
    app = create_serving_app(settings_from({"SEAMWALK_DATA": data}), hasher=CHEAP, looks=0.3)
    maker = app.extensions["reports"]
    write = maker._write

    def held(*given: Any) -> Path:
        print("making", flush=True)
        while not os.path.exists(gate):
            time.sleep(0.02)
        return write(*given)

    maker._write = held
    print("serving", flush=True)
    while True:
        time.sleep(1)


if __name__ == "__main__":
    serve(*sys.argv[1:])
