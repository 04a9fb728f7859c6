"""A browser without a debugger on its workers: Chromium lets no worker rest that one is attached to. DevTools protocol
over a pipe, to pages alone (https://chromedevtools.github.io/devtools-protocol/)."""

import json
import os
import subprocess
from pathlib import Path
from types import TracebackType
from typing import Any


class Bare:
    """``page(url)`` opens a page; ``run(page, script)`` gives what an async function of this body returns in it."""

    def __init__(self, chromium: str, flags: list[str], folder: Path) -> None:
        (theirs_in, self._to), (self._from, theirs_out) = os.pipe(), os.pipe()

        def pipes() -> None:  # the browser reads 3 and writes 4
            os.dup2(theirs_in, 13), os.dup2(theirs_out, 14)
            os.dup2(13, 3), os.dup2(14, 4)

        self.process = subprocess.Popen(
            [chromium, "--headless", *flags, "--remote-debugging-pipe", f"--user-data-dir={folder}", "about:blank"],
            preexec_fn=pipes, pass_fds=(3, 4, theirs_in, theirs_out), stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )  # fmt: skip
        os.close(theirs_in), os.close(theirs_out)
        self._asked, self._left = 0, b""

    def page(self, url: str) -> str:
        made = self._ask("Target.createTarget", {"url": url})
        attached = self._ask("Target.attachToTarget", {"targetId": made["targetId"], "flatten": True})
        return str(attached["sessionId"])

    def run(self, page: str, body: str) -> Any:
        asked = {"expression": f"(async () => {{ {body} }})()", "awaitPromise": True, "returnByValue": True}
        told = self._ask("Runtime.evaluate", asked, page)
        if "exceptionDetails" in told:
            raise AssertionError(told["exceptionDetails"])
        return told["result"].get("value")

    def _ask(self, method: str, params: dict, session: str | None = None) -> Any:
        self._asked += 1
        asked = {"id": self._asked, "method": method, "params": params} | ({"sessionId": session} if session else {})
        os.write(self._to, json.dumps(asked).encode() + b"\0")
        while True:
            one, end, rest = self._left.partition(b"\0")
            if not end:
                read = os.read(self._from, 1 << 16)
                if not read:
                    raise AssertionError("the browser is gone")
                self._left += read
                continue
            self._left, told = rest, json.loads(one)
            if told.get("id") == self._asked:
                if "error" in told:
                    raise AssertionError(told["error"])
                return told["result"]

    def __enter__(self) -> "Bare":
        return self

    def __exit__(self, kind: type | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.process.kill()
        self.process.wait()
        os.close(self._to), os.close(self._from)
