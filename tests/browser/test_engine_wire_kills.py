"""One long upload; the page, the link and the server are ended again and again: the photo arrives, once and whole."""

import pytest

from tests.browser.phone import Phone, entry
from tests.browser.wire import LINK, SEND, WORK
from tests.intake.receiving import JOB
from tests.seed import chance
from tests.tus.cutting_proxy import REQUESTS, RESPONSES, CuttingProxy
from tests.tus.plain_client import Client
from tests.tus.real_app import PASSWORD, prepare, real_app, tokens_of
from tests.tus.serving import Killable

SIZE = 20_000_000
PAGE = "/api/server"  # any page of the server's origin: the modules are brought to it


def through(context, folder, kills: int) -> dict[str, int]:
    prepare(folder)
    server = Killable(folder)
    proxy = CuttingProxy(server.port)
    context.add_init_script(LINK)
    phone = Phone(context, f"http://127.0.0.1:{proxy.port}", PAGE)
    phone.run("await signIn(...arg); await enrol()", ["foreman", PASSWORD])
    given = {"n": 1, "size": SIZE, "job": JOB, "area": entry(JOB, "killed"), "hurry": 20, "tries": 0}
    sha256 = phone.run(WORK + SEND, given)["photo"]
    dice, told = chance("upload kills"), dict.fromkeys(("page", "link", "server"), 0)
    for _ in range(kills):
        what = dice.choice(("page", "link", "link", "server"))  # a server takes seconds to start
        told[what] += 1
        way = dice.choice(("reset", "close")) if what == "link" else "reset"
        if what == "server":
            proxy.on_cut = server.kill
        proxy.cut_after(dice.choice((REQUESTS, RESPONSES)), dice.randrange(1, 60_000), way)
        phone.run("link.hurry = 20; await sendNow()")
        if what == "server" and server.process.poll() is not None:
            server.start()
        proxy.on_cut = lambda: None
        proxy.cut_after(REQUESTS, 1 << 40)
        if what == "page":
            phone.again()
    assert phone.run("await sendNow(); const { entries, photos } = await sendNow(); return entries + photos") == 0
    asked = f"/api/photos/receipt?job={JOB}&sha256={sha256}"
    reply = Client(server.port, tokens_of(folder)["foreman"]).call("GET", asked)
    assert reply.json["receipt"] in {row["token"] for row in phone.rows("receipts")}
    proxy.close()
    server.kill()
    vault = real_app(folder).extensions["photos"].vault
    assert vault.found(sha256) == sha256 and list(vault.names()) == [sha256]
    return told


@pytest.mark.soak
def test_an_upload_of_20_mb_through_60_ends_of_page_link_and_server(chromium, tmp_path) -> None:
    told = through(chromium.new_context(), tmp_path / "data", 60)
    print(f"20 MB through {told}: arrived whole, once")
