"""The smallest client that follows the protocol: after any doubt it asks for the offset and goes on."""

import base64
import hashlib
import http.client
import json
from typing import NamedTuple

from tests.intake.upload_bench import JOB
from tests.tus.small_app import TOKEN

BYTES = "application/offset+octet-stream"


class Reply(NamedTuple):
    status: int
    headers: dict
    body: bytes

    @property
    def error(self):
        return json.loads(self.body)["error"]


def metadata(photo, job=JOB, sha256=None, type="image/jpeg"):
    values = {"job": job, "sha256": sha256 or hashlib.sha256(photo).hexdigest(), "type": type}
    return ",".join(f"{key} {base64.b64encode(value.encode()).decode()}" for key, value in values.items())


def checksum(data, algorithm="sha256"):
    return f"{algorithm} {base64.b64encode(hashlib.new(algorithm, data).digest()).decode()}"


class Client:
    """One request a connection; whatever breaks is an ``OSError`` or ``http.client.HTTPException``."""

    def __init__(self, port, token=TOKEN, timeout=20):
        self.port, self.token, self.timeout = port, token, timeout

    def call(self, method, path, body=None, **headers):
        sent = {"Authorization": f"Bearer {self.token}", "Tus-Resumable": "1.0.0"}
        sent |= {name.replace("_", "-"): value for name, value in headers.items()}
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=self.timeout)
        try:
            connection.request(method, path, body, {name: value for name, value in sent.items() if value is not None})
            answer = connection.getresponse()
            return Reply(answer.status, {key.lower(): value for key, value in answer.getheaders()}, answer.read())
        finally:
            connection.close()

    def create(self, photo, **about):
        return self.call("POST", "/api/photos", Upload_Length=str(len(photo)), Upload_Metadata=metadata(photo, **about))

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
                    if reply.status in (404, 410):
                        location = None
                        continue
                else:
                    reply = self.patch(location, offset, photo[offset : offset + piece])
                if "seamwalk-receipt" in reply.headers:
                    return reply.headers["seamwalk-receipt"], doubts
                offset = int(reply.headers["upload-offset"]) if reply.status in (200, 204) else None
            except (OSError, http.client.HTTPException, KeyError):
                doubts += 1
                offset = None
        raise AssertionError("never arrived")
