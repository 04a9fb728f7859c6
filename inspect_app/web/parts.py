"""The app's parts, as a route asks for them."""

from typing import TYPE_CHECKING, cast

from flask import current_app

if TYPE_CHECKING:
    from inspect_app.application import Parts


def parts() -> "Parts":
    return cast("Parts", current_app.extensions["seamwalk"])
