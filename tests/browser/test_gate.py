"""The gate that tests cut connections with."""

import socket
import struct

from tests.browser.gate import hung_up


def test_a_connection_that_the_other_side_has_torn_off_first_is_cut_as_any_other() -> None:
    at_once = struct.pack("ii", 1, 0)  # SO_LINGER, socket(7): no farewell
    with socket.create_server(("127.0.0.1", 0)) as server, socket.create_connection(server.getsockname()) as phone:
        here, _ = server.accept()
        phone.setsockopt(socket.SOL_SOCKET, socket.SO_LINGER, at_once)
        phone.close()
        with here:
            assert isinstance(hung_up({"werkzeug.socket": here}), ConnectionError)
