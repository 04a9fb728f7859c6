"""A phone as the tests hold it: one page that calls the app's own modules."""

from typing import Any

from tests.browser.office import PASSWORD

MODULES = {
    "signIn, setPin, unlock, lock, signOut, current, phonePeople": "people/session.js",
    "enrol": "people/device.js",
    "keepEntry": "outbox/keep.js",
    "counts": "outbox/counts.js",
    "outboxItems, sendAgain": "outbox/items.js",
    "nextTicket, withTicket": "outbox/ticket.js",
    "keepPhoto": "photo/keep.js",
    "photoBytes": "photo/read.js",
    "sendNow, startSync, status": "sync/engine.js",
    "jobs, definition": "record/load.js",
    "withDb": "storage/database.js",
    "capable": "shell/capable.js",
    "askWorker": "shell/worker.js",
    "startUpdates, updateWaiting, applyIfQuiet": "shell/update.js",
    "repairApp": "shell/repair.js",
    "saveDraft, loadDraft, dropDraft": "storage/drafts.js",
}


class Phone:
    """``run(body, arg)`` runs the body of an async function in the page; it may use every call of MODULES."""

    def __init__(self, context: Any, url: str, path: str = "/api/blank") -> None:
        self.context, self.url, self.path = context, url, path
        self.page = context.new_page()
        self.again()

    def run(self, body: str, arg: object = None) -> Any:
        names = [name for name in MODULES if any(one in body for one in name.split(", "))]
        imports = "".join(f"const {{ {name} }} = await import('/static/{MODULES[name]}');" for name in names)
        return self.page.evaluate(f"async (arg) => {{ {imports} {body} }}", arg)

    def sign_in(self, login: str) -> dict:
        script = "const person = await signIn(...arg); await enrol(); return person"
        return self.run(script, [login, PASSWORD])

    def note(self, job: str, text: str) -> dict:
        """Keep a small entry of this name."""
        return self.run("return keepEntry(arg)", entry(job, text))

    def rows(self, store: str) -> list:
        return self.run("return withDb([arg], 'readonly', (tx) => tx.store.getAll())", store)

    def again(self) -> None:
        """Load the page anew, and the modules, so that the server may then be stopped."""
        self.page.goto(self.url + self.path)
        loads = ", ".join(f"import('/static/{module}')" for module in MODULES.values())
        self.page.evaluate(f"async () => {{ await Promise.all([{loads}]) }}")


def entry(job: str, text: str) -> dict:
    """A roof area of one square foot, named ``text``: an invented thing a foreman may record."""
    subject = "01a00000-0000-7000-8000-" + text.encode().hex()[:12].rjust(12, "0")
    body = {
        "name": text, "assembly": "01a00000-0000-7000-8000-00000000000a",
        "slope": {"value": "4", "unit": "/12"}, "start": "left",
        "outline": {"unit": "ft", "points": [["0", "0"], ["1", "0"], ["1", "1"], ["0", "1"]]},
        "edges": ["eave", "rake", "ridge", "rake"], "coverage": {"value": "16", "unit": "in"},
        "fixed_line": None, "zones": ["field"],
    }  # fmt: skip
    return {"job": job, "kind": "area", "subject": subject, "body": body}


def picture(number: int | str, size: int | str) -> str:
    """JavaScript that makes a JPEG-headed file of this many bytes, different for each number; both may be
    JavaScript."""
    return f"""(() => {{ const bytes = new Uint8Array({size}); let x = ({number}) * 2654435761 % 4294967296;
      for (let i = 0; i < bytes.length; i += 1) {{
        x = (x * 1664525 + 1013904223) % 4294967296; bytes[i] = x >>> 24 }}
      if (bytes.length > 2) {{ bytes[0] = 0xff; bytes[1] = 0xd8 }}
      return new File([bytes], 'picture.jpg', {{ type: 'image/jpeg' }}) }})()"""


def keep_picture(phone: Phone, job: str, number: int, size: int) -> dict:
    """Keep a photo and its declaration, as a screen does."""
    photo = phone.run(f"return keepPhoto({picture(number, size)})")
    declare(phone, job, photo)
    return photo


def declare(phone: Phone, job: str, photo: dict) -> None:
    """Keep the entry of a photo that is kept."""
    known = {name: photo[name] for name in ("sha256", "size", "type", "width", "height")}
    walk = {"walk": "01a00000-0000-7000-8000-00000000000b", "station": None, "answer": None}
    body = {**walk, "role": "other", "source": "picked", **known}
    phone.run("await keepEntry(arg)", {"job": job, "kind": "photo", "subject": photo["sha256"], "body": body})
