"""A folder with people and keys in it, made once and copied for each test."""

import shutil

import pytest

from tests.tus.plain_client import Client
from tests.tus.real_app import prepare, real_app, tokens_of
from tests.tus.serving import served


@pytest.fixture(scope="session")
def prepared(tmp_path_factory):
    folder = tmp_path_factory.mktemp("prepared") / "data"
    prepare(folder)
    return folder


@pytest.fixture
def folder(prepared, tmp_path):
    shutil.copytree(prepared, tmp_path / "data")
    return tmp_path / "data"


@pytest.fixture
def tokens(prepared):
    """Bearer tokens by login: the foreman is in JOB, the stranger in OTHER_JOB, the inspector in both."""
    return tokens_of(prepared)


@pytest.fixture
def client(folder, tokens):
    """The foreman's phone, speaking to the app over a socket."""
    with served(real_app(folder)) as port:
        yield Client(port, tokens["foreman"])
