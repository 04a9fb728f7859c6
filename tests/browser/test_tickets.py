"""Tickets on the phone: brought by every round, each used once whatever other tabs do, and no forged one taken."""

import json

from tests.bodies import body_of
from tests.browser.phone import Phone

HELD = """return withDb(['meta'], 'readonly', async (tx) => {
  const range = IDBKeyRange.bound(['ticket'], ['ticket', []])
  const [keys, rows] = [await tx.store.getAllKeys(range), await tx.store.getAll(range)]
  return keys.map((key, at) => [key[4], Boolean(rows[at].used)]) })"""
KEEP = """({ kid, body, job }) => (ticket) =>
  keepEntry({ job, kind: 'lot', subject: `${kid}/work/${ticket.n}`, body: { ...body, ticket } })"""


def asked(office) -> int:
    return office.gate.seen.count("POST /api/tickets")


def lots(phone: Phone) -> dict:
    """What a page needs to keep a lot."""
    kid = phone.run("return (await current()).kid")
    return {"kid": kid, "body": body_of("lot"), "job": phone.job}


def keep_one(page: Phone, given: dict, times: int = 1) -> list:
    """Draws ``times`` lots one after another; the ticket's number of each."""
    return page.run(
        f"""const keep = ({KEEP})(arg); const used = []
        for (let n = 0; n < {times}; n += 1) {{
          await withTicket(arg.job, 'work', async (ticket) => {{ await keep(ticket); used.push(ticket.n) }}) }}
        return used""",
        given,
    )


def test_a_round_brings_twelve_tickets_a_lot_uses_the_lowest_and_a_round_fills_up(phone: Phone, office) -> None:
    phone.job = office.job
    phone.sign_in("ann")
    phone.run("await sendNow(); await sendNow()")
    assert phone.run(HELD) == [[n, False] for n in range(12)]
    assert asked(office) == 1, "asked for only where some are wanting"
    given = lots(phone)
    office.stop()
    phone.run("await sendNow()")
    assert keep_one(phone, given, 2) == [0, 1] and phone.run("return nextTicket(arg, 'work')", office.job)["n"] == 2
    assert phone.run(HELD) == [[n, n < 2] for n in range(12)], "without signal what is there stays, and is used"
    office.start()
    state = phone.run("return sendNow()")
    assert state["entries"] == 0, phone.run("return outboxItems()")
    assert phone.run(HELD) == [[n, n < 2] for n in range(14)]


def test_two_tabs_at_once_never_use_one_ticket_twice(phone: Phone, office) -> None:
    phone.job = office.job
    phone.sign_in("ann")
    phone.run("await sendNow()")
    given = lots(phone)
    other = Phone(phone.context, office.url)
    # Each tab holds the same ticket in its hand before either keeps its lot.
    begin = f"""window.mine = await nextTicket(arg.job, 'work'); window.keep = () => ({KEEP})(arg)(window.mine);
      window.keepEntry = keepEntry; return window.mine.n"""
    assert phone.run(begin, given) == other.run(begin, given) == 0
    ends = [page.run("return keepEntry ? window.keep().then(() => 'kept', (fault) => fault.code) : ''")
            for page in (phone, other)]  # fmt: skip
    assert ends == ["kept", "outbox.ticket_taken"]
    # And truly at once: both are started before either is awaited.
    script = f"""const keep = ({KEEP})(arg); window.used = (async () => {{ const used = []
      for (let n = 0; n < 4; n += 1) {{
        await withTicket(arg.job, 'work', async (ticket) => {{ await keep(ticket); used.push(ticket.n) }}) }}
      return used }})()"""
    for page in (phone, other):
        page.run(script, given)
    used = [page.run("return window.used") for page in (phone, other)]
    assert sorted(used[0] + used[1]) == list(range(1, 9)), used
    phone.run("await sendNow()")
    named = [one.payload["subject"] for one in office.entries() if one.payload["kind"] == "lot"]
    assert sorted(named) == sorted(f"{given['kid']}/work/{n}" for n in range(9))


def test_tickets_that_are_forged_out_of_order_or_another_s_are_not_taken(phone: Phone, office) -> None:
    ann = phone.sign_in("ann")
    with office.app.app_context():
        kid = office.parts.devices.of(ann["id"])[0].kid
        good = office.parts.tickets.give(office.job, kid, "work", -1)
        others = office.parts.tickets.give(office.job, "k" * 43, "work", -1)
        audit = office.parts.tickets.give(office.job, kid, "audit", -1)
    at = len(good[3]) // 2
    answers = [
        good[::-1], [good[0], good[0]], [*good[:3], others[3]], audit, ["<html>"], [None], {},
        [*good[:3], good[3][:at] + ("A" if good[3][at] != "A" else "B") + good[3][at + 1 :]],
    ]  # fmt: skip
    answer: list = []
    phone.page.route("**/api/tickets", lambda route: route.fulfill(
        json={"tickets": answer[-1]}, headers={"Seamwalk-Answer": route.request.headers["seamwalk-ask"]}))
    for one in answers:
        answer.append(one)
        state = phone.run("return sendNow()")
        assert state["reason"] in ("sync.forged_ticket", "sync.server_busy"), (json.dumps(one)[:80], state["reason"])
        assert phone.run(HELD) == [], json.dumps(one)[:80]
    phone.page.unroute("**/api/tickets")
    assert phone.run("return sendNow()")["reason"] is None and len(phone.run(HELD)) == 12
