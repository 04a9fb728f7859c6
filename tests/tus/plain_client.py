"""The smallest client that follows the protocol: after any doubt it asks for the offset and goes on."""

import base64
import hashlib
import http.client
import json
from typing import NamedTuple

from inspect_app.entry.jws import verify
from inspect_app.entry.refusal import Refused
from inspect_app.entry.statement import parse_statement
from tests.intake.receiving import JOB

BYTES = "application/offset+octet-stream"


class Reply(NamedTuple):
    status: int
    headers: dict
    body: bytes

    @property
    def json(self):
        return json.loads(self.body)

    @property
    def error(self):
        return self.json["error"]


def metadata(photo, job=JOB, sha256=None, type="image/jpeg"):
    values = {"job": job, "sha256": sha256 or hashlib.sha256(photo).hexdigest(), "type": type}
    return ",".join(f"{key} {base64.b64encode(value.encode()).decode()}" for key, value in values.items())


def checksum(data, algorithm="sha256"):
    return f"{algorithm} {base64.b64encode(hashlib.new(algorithm, data).digest()).decode()}"


class Client:
    """One request a connection; whatever breaks is an ``OSError`` or ``http.client.HTTPException``."""

    def __init__(self, port, token, timeout=20):
        self.port, self.token, self.timeout = port, token, timeout
        self._key = None

    def call(self, method, path, body=None, **headers):
        sent = {"Authorization": f"Bearer {self.token}", "Tus-Resumable": "1.0.0"}
        sent |= {name.replace("_", "-"): value for name, value in headers.items()}
        sent = {name: value for name, value in sent.items() if value is not None}
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=self.timeout)
        try:
            connection.request(method, path, body, sent)
            answer = connection.getresponse()
            got = {key.lower(): value for key, value in answer.getheaders()}
            return Reply(answer.status, got, answer.read())
        finally:
            connection.close()

    def create(self, photo, **about):
        headers = {"Upload_Length": str(len(photo)), "Upload_Metadata": metadata(photo, **about)}
        return self.call("POST", "/api/photos", **headers)

    def head(self, location):
        return self.call("HEAD", location)

    def patch(self, location, offset, data, **headers):
        headers = {"Content_Type": BYTES, "Upload_Checksum": checksum(data)} | headers
        return self.call("PATCH", location, data, Upload_Offset=str(offset), **headers)

    def send(self, photo, piece):
        """Send it all, whatever breaks; returns the receipt and how many times something did break."""
        doubts, location, offset = 0, None, None
        while doubts < 100:
            try:
                if location is None:
                    location = self.create(photo).headers["location"]
                if offset is None:
                    reply = self.head(location)
                    if reply.status != 200:  # gone, or an address that was cut: `/api/photos` is one too, and no upload
                        doubts, location = doubts + 1, None
                        continue
                else:
                    reply = self.patch(location, offset, photo[offset : offset + piece])
                receipt = reply.headers.get("seamwalk-receipt")
                # Headers cut in the middle can pass for whole ones; only a receipt that verifies counts.
                if receipt and self.vouched(receipt, photo):
                    return receipt, doubts
                offset = int(reply.headers["upload-offset"]) if reply.status in (200, 204) else None
            except (OSError, http.client.HTTPException):
                doubts += 1
                offset = None
            except (KeyError, ValueError, Refused):  # an answer, but not a whole one: perhaps of the address
                doubts += 1
                location = offset = None
        raise AssertionError("never arrived")

    def server_key(self):
        """The server's published key, asked for once."""
        if self._key is None:
            self._key = self.call("GET", "/api/server").json["jwk"]
        return self._key

    def vouched(self, receipt, photo, job=JOB):
        """Whether this is the server's own word, by its published key, that it holds exactly this photo."""
        statement = parse_statement(receipt)
        verify(statement, self.server_key())
        said = statement.payload
        name = hashlib.sha256(photo).hexdigest()
        return (said["kind"], said["job"], said["photo"], said["size"]) == ("receipt", job, name, len(photo))
