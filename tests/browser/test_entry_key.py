"""The phone's entry code in a real browser: the key stays inside and survives a reload, the server
verifies."""

import functools
import json
import threading
from collections.abc import Iterator
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import Any

import pytest

from inspect_app.entry.accept import Accepted, Key, accept
from tests.entry.known import MEMBERS, STATEMENTS, nothing_held, payload_of

STATIC = Path(__file__).parents[2] / "static"

KEEP_KEY = """async () => {
  const { makeKey } = await import('/entry/key.js')
  const key = await makeKey()
  const open = indexedDB.open('probe', 1)
  open.onupgradeneeded = () => open.result.createObjectStore('keys')
  await new Promise((done, failed) => { open.onsuccess = done; open.onerror = failed })
  const write = open.result.transaction('keys', 'readwrite')
  write.objectStore('keys').put(key.privateKey, 'device')
  await new Promise((done, failed) => { write.oncomplete = done; write.onerror = failed })
  return { jwk: key.jwk, kid: key.kid }
}"""

SIGN = """async ({ kid, payload }) => {
  const { signEntry } = await import('/entry/sign.js')
  const open = indexedDB.open('probe', 1)
  await new Promise((done, failed) => { open.onsuccess = done; open.onerror = failed })
  const read = open.result.transaction('keys').objectStore('keys').get('device')
  await new Promise((done, failed) => { read.onsuccess = done; read.onerror = failed })
  let leaked = true
  await crypto.subtle.exportKey('jwk', read.result).catch(() => { leaked = false })
  return { leaked, ...await signEntry(JSON.parse(payload), { kid, privateKey: read.result }) }
}"""

CHECK = """async ({ token, jwk, expected }) => {
  const { verifyReceipt } = await import('/entry/receipt.js')
  return (await verifyReceipt(token, jwk, expected)).seq
}"""


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, format: str, *args: Any) -> None:
        pass


@pytest.fixture
def address() -> Iterator[str]:
    server = ThreadingHTTPServer(("127.0.0.1", 0), functools.partial(Quiet, directory=STATIC))
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/words/entry.json"
    server.shutdown()
    server.server_close()


def test_a_key_made_in_the_browser_signs_after_a_reload_what_the_server_accepts(
    address: str, chromium: Any
) -> None:
    context = chromium.new_context()
    page = context.new_page()
    page.goto(address)
    key = page.evaluate(KEEP_KEY)
    page.reload()
    payload = payload_of("wild text")
    made = page.evaluate(SIGN, {"kid": key["kid"], "payload": json.dumps(payload)})
    receipt = STATEMENTS["statements"][2]["token"]
    expected = {"photo": "0f" * 32, "size": 4096}
    seq = page.evaluate(CHECK, {"token": receipt, "jwk": STATEMENTS["server"], "expected": expected})
    context.close()
    assert not made["leaked"]
    assert seq == 5
    outcome = accept(made["token"], {key["kid"]: Key(key["jwk"], "ada")}, MEMBERS, nothing_held)
    assert isinstance(outcome, Accepted), outcome
    assert outcome.entry.payload == payload
    assert outcome.entry.digest == made["digest"]
