"""What a phone must fetch once, beside the budget of DEVELOPERS.md."""

import tempfile

from inspect_app.application import create_app
from inspect_app.settings import settings_from
from tests.bench.measure import Row
from tests.web.test_shell import BUDGET


def rows() -> list[Row]:
    with tempfile.TemporaryDirectory() as folder:
        client = create_app(settings_from({"SEAMWALK_DATA": folder})).test_client()
        addresses = [one["url"] for one in client.get("/shell.json").json["files"]]
        asked = [client.get(address, headers={"Accept-Encoding": "gzip"}) for address in addresses]
        weight = sum(len(reply.data) for reply in asked)
    return [Row(f"the app, {weight / 1024:.0f} KiB compressed", f"{BUDGET // 1024} KiB", weight / BUDGET, 1,
                "46 s once, at 100 kbit/s")]  # fmt: skip
