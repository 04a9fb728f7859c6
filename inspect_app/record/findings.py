"""Findings: a failed answer opens one. They are derived, so nobody can forget to write one down."""


def findings(answers: dict) -> dict:
    """``{answer subject: finding}`` for each answer whose result is ``fail``."""
    return {
        subject: {
            "id": subject, "walk": answer["walk"], "station": answer["station"], "area": answer["area"],
            "definition": answer["definition"], "item": answer["item"], "result": answer["result"],
            "state": "open",
        }
        for subject, answer in sorted(answers.items())
        if answer["result"] == "fail"
    }
