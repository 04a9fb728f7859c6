"""The connection breaks after any byte, of what the phone sends or of what it is answered: the photo arrives
once, whole, and with one receipt."""

import os
import socket
import threading
import time

import pytest

from inspect_app.store.vault import hash_of
from tests.intake.receiving import JOB
from tests.tus.cutting_proxy import REQUESTS, RESPONSES, CuttingProxy
from tests.tus.plain_client import Client
from tests.tus.real_app import real_app
from tests.tus.serving import served, served_streaming

SIZE, PIECE = 120, 40


@pytest.fixture
def app(folder):
    return real_app(folder)


def _cut_everywhere(app, token, step, direction, way="reset", buffering=False):
    """Send a new small photo for each place of the cut. Returns how many cuts there were."""
    vault = app.extensions["photos"].vault
    with served(app) as port:
        proxy = CuttingProxy(port, buffering, pause=0.02)
        client = Client(proxy.port, token, timeout=0.3 if way == "silence" else 20)
        photo = os.urandom(SIZE)
        client.server_key()
        proxy.cut_after(direction, 1 << 30)
        client.send(photo, PIECE)
        whole = proxy.passed[direction]
        for place in range(1, whole, step):
            photo = os.urandom(SIZE)
            proxy.cut_after(direction, place, way)
            receipt, _ = client.send(photo, PIECE)
            assert client.vouched(receipt, photo), place
            assert vault.read(hash_of([photo]), verify=True) == photo
        proxy.close()
        names = list(vault.names())
        assert len(names) == 1 + len(range(1, whole, step))
        assert all(vault.found(name) == name for name in names)
        assert list(app.extensions["photos"].uploads.folder.glob("*/*.part")) == []
        return proxy.cuts, len(range(1, whole, step))


@pytest.mark.parametrize("direction", [REQUESTS, RESPONSES])
@pytest.mark.parametrize(("way", "step"), [("reset", 61), ("close", 97), ("stall", 211), ("silence", 331)])
def test_a_break_here_and_there_costs_nothing(app, tokens, direction, way, step):
    cuts, places = _cut_everywhere(app, tokens["foreman"], step, direction, way)
    assert cuts == places > 2


def test_behind_a_proxy_that_holds_requests_back_until_they_are_whole_a_cut_costs_nothing_either(app, tokens):
    cuts, places = _cut_everywhere(app, tokens["foreman"], 97, REQUESTS, buffering=True)
    assert cuts == places > 10


@pytest.mark.soak
@pytest.mark.parametrize("direction", [REQUESTS, RESPONSES])
@pytest.mark.parametrize(
    ("way", "step", "buffering"),
    [("reset", 1, False), ("close", 3, False), ("stall", 7, False), ("silence", 17, False), ("reset", 7, True)],
)
def test_a_break_after_every_byte_costs_nothing(app, tokens, direction, way, step, buffering):
    cuts, places = _cut_everywhere(app, tokens["foreman"], step, direction, way, buffering)
    where = f"{('requests', 'responses')[direction]}{', whole requests held back' if buffering else ''}"
    print(f"{way} after every byte (in steps of {step}) of the {where}: {places} places, 0 lost")
    assert cuts == places > 800 / step


def test_a_server_that_streams_keeps_what_came_before_the_cut(app, tokens):
    photo = os.urandom(1_000_000)
    with served_streaming(app) as port:
        proxy = CuttingProxy(port)
        client = Client(proxy.port, tokens["foreman"])
        location = client.create(photo).headers["location"]
        proxy.cut_after(REQUESTS, 600_000)
        with pytest.raises(OSError):
            client.patch(location, 0, photo, Upload_Checksum=None)
        kept = _settled(client, location)
        assert 0 < kept < 600_000
        last = client.patch(location, kept, photo[kept:])
        assert client.vouched(last.headers["seamwalk-receipt"], photo)


@pytest.mark.parametrize("serving", [served, served_streaming])
def test_a_request_that_hangs_for_ever_holds_nobody_up(app, tokens, serving):
    photo = os.urandom(300_000)
    with serving(app) as port:
        client = Client(port, tokens["foreman"], timeout=5)
        location = client.create(photo).headers["location"]
        head = [
            f"PATCH {location} HTTP/1.1", "Host: localhost", f"Authorization: Bearer {tokens['foreman']}",
            "Tus-Resumable: 1.0.0", "Upload-Offset: 0", "Content-Type: application/offset+octet-stream",
            f"Content-Length: {len(photo)}", "", "",
        ]  # fmt: skip
        # Frozen in the middle of a block, without a reset: the phone is in a tunnel.
        hanging = [socket.create_connection(("127.0.0.1", port)) for _ in range(3)]
        for connection in hanging:
            connection.sendall("\r\n".join(head).encode() + bytes(100_000))
        assert int(client.head(location).headers["upload-offset"]) == 0
        receipt, doubts = client.send(photo, 100_000)
        assert doubts == 0 and client.vouched(receipt, photo)
        for connection in hanging:
            connection.sendall(bytes(200_000))  # and out of it again
            connection.close()
        assert client.call("GET", f"/photos/{hash_of([photo])}?job={JOB}").body == photo


def test_two_phones_of_one_person_racing_through_one_upload_agree(app, tokens):
    photo = os.urandom(400_000)
    with served(app) as port:
        clients = [Client(port, tokens["foreman"]) for _ in range(3)]
        receipts = _at_once([lambda c=c, n=n: c.send(photo, 20_000 + 7000 * n)[0] for n, c in enumerate(clients)])
        assert len(set(receipts)) == 1 and clients[0].vouched(receipts[0], photo)


def test_two_devices_sending_the_same_photo_get_the_same_receipt_and_it_is_stored_once(app, tokens):
    photo = os.urandom(200_000)
    with served(app) as port:
        clients = [Client(port, tokens[login]) for login in ("foreman", "inspector")]
        receipts = _at_once([lambda c=c: c.send(photo, 30_000)[0] for c in clients])
        assert len(set(receipts)) == 1 and clients[0].vouched(receipts[0], photo)
        assert list(app.extensions["photos"].vault.names()) == [hash_of([photo])]


def test_a_request_that_a_browser_sends_again_by_itself_does_no_harm(app, tokens):
    photo = os.urandom(50_000)
    with served(app) as port:
        client = Client(port, tokens["foreman"])
        made = [client.create(photo) for _ in range(2)]
        location = made[0].headers["location"]
        assert made[1].headers["location"] == location
        assert client.patch(location, 0, photo[:20_000]).status == 204
        assert client.patch(location, 0, photo[:20_000]).status == 409
        assert client.head(location).headers["upload-offset"] == "20000"
        last = [client.patch(location, 20_000, photo[20_000:]) for _ in range(2)]
        assert (last[0].status, last[1].status) == (204, 409)
        assert client.head(location).headers["seamwalk-receipt"] == last[0].headers["seamwalk-receipt"]
        assert client.vouched(last[0].headers["seamwalk-receipt"], photo)


def _settled(client, location):
    """The offset once the server has noticed the cut and put away what it had."""
    before = -1
    for _ in range(100):
        offset = int(client.head(location).headers["upload-offset"])
        if offset == before > 0:
            return offset
        before = offset
        time.sleep(0.02)
    return before


def _at_once(calls):
    results = []
    threads = [threading.Thread(target=lambda call=call: results.append(call())) for call in calls]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    assert len(results) == len(calls)
    return results
