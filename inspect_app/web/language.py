"""The language of a request: English or Spanish, by ``Accept-Language``."""

from flask import request

from inspect_app.words import LANGUAGES


def language() -> str:
    return request.accept_languages.best_match(LANGUAGES) or LANGUAGES[0]
