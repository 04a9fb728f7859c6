"""Every vector of the rules through the phone's own worker: MicroPython in Chromium answers as the server does."""

import json
from pathlib import Path
from typing import Any

from inspect_app.rules.refused import Refused
from inspect_app.rules.rulebook import judge
from tests.micropython.test_parity import same

VECTORS = json.loads((Path(__file__).parents[1] / "vectors" / "rules.json").read_text("utf-8"))
ASK = """async (requests) => {
  const { ask } = await import('/static/rules/ask.js')
  return Promise.all(requests.map((request) => ask(request).then(
    (answer) => JSON.stringify({ ok: answer }),
    ({ code, field, value }) => JSON.stringify({ refused: { code, field, value } }))))
}"""


def on_the_server(rule: str, inputs: dict[str, Any]) -> dict[str, Any]:
    try:
        return {"ok": judge(rule, inputs)}
    except Refused as refused:
        return {"refused": {"code": refused.code, "field": refused.field, "value": refused.value}}


def test_the_phone_s_worker_answers_every_vector_as_the_server_does(phone):
    """Equal decisions, numbers within 1e-12 of each other."""
    asked = [{"call": "judge", "rule": one["rule"], "inputs": one["inputs"]} for one in VECTORS]
    answers = [json.loads(text) for text in phone.page.evaluate(ASK, asked)]
    assert len(answers) == len(VECTORS) > 300
    for vector, answer in zip(VECTORS, answers, strict=True):
        assert same(json.loads(json.dumps(on_the_server(vector["rule"], vector["inputs"]))), answer), vector["source"]
        assert (answer.get("refused") or {}).get("code") == vector["refused"]
        if "ok" in answer:
            assert answer["ok"]["verdict"] == vector["verdict"]
