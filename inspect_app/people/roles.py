"""The roles a person can have. What each may say is in ``inspect_app/record/authority.py``."""

from inspect_app.errors import BadInput

ROLES = ("foreman", "inspector", "reviewer", "administrator", "engineer", "owner")


def role(text: str) -> str:
    """One of ``ROLES``. Raises ``BadInput``."""
    if text not in ROLES:
        raise BadInput("unknown_role", "role", text)
    return text
