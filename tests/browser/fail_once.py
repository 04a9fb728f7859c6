"""A phone of which one call fails: a capture-and-sync script run again and again, each time with another call."""

from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tests.browser.office import Office
from tests.browser.phone import Phone, entry, picture

SHIM = Path(__file__).with_name("fail_once.js").read_text("utf-8")
STATUSES = ("301", "400", "401", "403", "404", "409", "410", "413", "415", "422", "429", "500", "503")
WAYS = {
    "storage": ("InvalidStateError", "UnknownError", "QuotaExceededError", "closed", "never", "unheard"),
    "fetch": ("rejects", "never", "answer lost", "cut", "200 HTML", "502 HTML", "200 JSON",
              "200 without receipt", "forged receipt", "receipt of another", *STATUSES),
    "crypto": ("rejects", "throws"),
    "file": ("rejects", "empty", "short"),
}  # fmt: skip
MOST_OPENS = 4  # the connection that was dropped, and three more

# Drafts, a photo in two chunks, its entry, an entry that ends the draft, delivery. What fails is tried again, as a
# person does; `told` is what was said to be saved, in that moment held to what the database had completed.
SCRIPT = """
  const { n, kind, at, how, job, area } = arg;
  const again = async (work) => { for (let tries = 1; ; tries += 1) {
    try { return await work() } catch (problem) { troubles.push(problem.code ?? problem.name);
      if (tries === 4) throw problem } } };
  const troubles = [], told = [], early = [];
  const tell = (name) => { told.push(name); if (!fault.completed.has(name)) early.push(name) };
  const draft = `draft ${n}`, file = MAKE;
  await fault.quiet();
  fault.set(kind, at, how);
  await again(() => saveDraft('p', draft, { n: -1 }));
  await again(() => saveDraft('p', draft, { n }));
  if ((await again(() => loadDraft('p', draft))).n !== n) throw new Error('the draft is not what was typed');
  const photo = await again(() => keepPhoto(file)); tell(photo.sha256);
  const { sha256, size, type } = photo; if (size !== file.size) throw new Error("a part of the photo");
  const body = { walk: '01a00000-0000-7000-8000-00000000000b', station: null, answer: null, role: 'other', sha256,
    size, type, source: 'picked' };
  tell((await again(() => keepEntry({ job, kind: 'photo', subject: sha256, body }))).digest);
  tell((await again(() => keepEntry({ ...area, draft }))).digest);
  await sendNow().catch(() => {});
  const { hit, opens } = fault, calls = { ...fault.counts };
  fault.set('', 0, '');
  let left = await counts();
  for (let tries = 0; tries < 4 && left.entries + left.photos; tries += 1) { await sendNow(); left = await counts() }
  return { hit, opens, calls, told, early, troubles, left, relaxed: [...fault.relaxed] };"""


@dataclass
class Told:
    """What came of many runs."""

    points: int = 0
    reached: int = 0
    saved: list[str] = field(default_factory=list)
    wrong: list[str] = field(default_factory=list)
    hits: set[str] = field(default_factory=set)


class Fallible:
    """A signed-in phone with the shim over it. ``run`` is one script; ``calls`` how many of each kind it makes."""

    def __init__(self, context: Any, office: Office) -> None:
        context.add_init_script(SHIM)
        self.office, self.n, self.told = office, 0, Told()
        self.phone = Phone(context, office.url)
        self.phone.sign_in("ann")
        for _ in range(2):  # what is done once is behind it
            self.once("", 0, "")
        self.calls: dict[str, int] = self.once("", 0, "")["calls"]

    def once(self, kind: str, at: int, how: str) -> dict:
        self.n += 1
        make = picture("n", "262144 + 200 + n")
        arg = {"n": self.n, "kind": kind, "at": at, "how": how, "job": self.office.job,
               "area": entry(self.office.job, f"n{self.n}")}  # fmt: skip
        told = self.phone.run(SCRIPT.replace("MAKE", make), arg)
        self.told.saved += told["told"]
        return told

    def fail(self, kind: str, at: int, how: str) -> None:
        """One run with one failure, and what is wrong with what came of it."""
        name = f"{kind} {at} {how}"
        self.told.points += 1
        try:
            told = self.once(kind, at, how)
        except Exception as fault:
            self.told.wrong.append(f"{name}: {str(fault)[:300]}")
            return
        name += f" ({told['hit']})"
        self.told.reached += bool(told["hit"])
        self.told.hits.add(told["hit"])
        if told["early"]:
            self.told.wrong.append(f"{name}: said saved before it was complete: {told['early']}")
        if len(told["told"]) != 3 or told["left"]["entries"] + told["left"]["photos"]:
            self.told.wrong.append(f"{name}: {told}")
        if told["opens"] > MOST_OPENS:
            self.told.wrong.append(f"{name}: opened {told['opens']} times")
        if not set(told["relaxed"]) <= {"ballast,meta", "ballast"}:
            self.told.wrong.append(f"{name}: relaxed writes to {told['relaxed']}")

    def settled(self, before: list[str] | None = None) -> list[str]:
        """What is wrong in the end: held to the phone as it wakes anew, and to the office, which holds what phones
        ``before`` saved too."""
        self.phone.again()
        saved, wrong = self.told.saved, self.told.wrong
        entries = [name for name in saved if len(name) == 43]
        photos = [name for name in saved if len(name) == 64]
        here = [row["digest"] for row in self.phone.rows("entries") if row["from"] == "own"]
        there = [one.digest for one in self.office.entries() if one.payload["by"] == self.office.people["ann"]]
        kept = [row["sha256"] for row in self.phone.rows("photos")]
        all_of_them = entries + [name for name in before or [] if len(name) == 43]
        for what, found, expected in (
            ("phone", here, entries),
            ("office", there, all_of_them),
            ("photos", kept, photos),
        ):
            lost, unexpected = set(expected) - set(found), set(found) - set(expected)
            if lost or unexpected or len(found) != len(expected):
                wrong.append(f"{what}: lost {lost}, unexpected {unexpected}, {len(found)} of {len(expected)}")
        wrong += [f"the office has no bytes of {name}" for name in photos if not self.office.photo(name)]
        receipts = {row["name"] for row in self.phone.rows("receipts")}
        wrong += [f"no receipt of {name}" for name in saved if name not in receipts]
        return wrong
