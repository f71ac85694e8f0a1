"""Serving a job: to this machine alone, or to the home network when told so."""

from __future__ import annotations

import ipaddress
import socket
import sys
from collections.abc import Callable
from contextlib import closing
from pathlib import Path

import uvicorn

from casewright.errors import CasewrightError
from casewright.job.text import read_file
from casewright.web.application import application
from casewright.web.built_page import BuiltPage
from casewright.web.page_build import built_page_folder

__all__ = ["PORT", "ServingError", "home_addresses", "serve"]

PORT = 8417
"""Where the page is found unless told otherwise."""

_TURN_S = 0.0005
"""How long a thread that works a job out goes on while an entry waits for its turn [s].

Taking an entry and telling of it changes hands between threads some twenty times; at the usual
5 ms each, behind several threads that draw and work out, others saw a tick after seconds.
"""


class ServingError(CasewrightError):
    """The page cannot be served."""


def serve(
    job: Path,
    port: int,
    *,
    network: bool,
    tell: Callable[[str], None],
    building: Callable[[], None],
) -> None:
    """Serve a job until stopped.

    Parameters
    ----------
    port
        Where it is found; 0: any that is free.
    network
        Whether other devices of the home network may join.
    tell
        Says a line to the person.
    building
        Called when the page must be built first.

    Raises
    ------
    JobFileError
        When there is no such file.
    ServingError
        When the place is taken, or the page cannot be built.
    """
    read_file(job)
    page = BuiltPage.read(built_page_folder(building))
    host = "0.0.0.0" if network else "127.0.0.1"  # noqa: S104 (told to serve the home network)
    listening = _listening(host, port)
    port = listening.getsockname()[1]
    own = home_addresses() if network else ()
    addresses = tuple(f"http://{address}:{port}/" for address in own)
    app = application(job, page, addresses, (*own, *_names(network)))
    tell(f"Here: http://127.0.0.1:{port}/")
    for address in addresses:
        tell(f"Other devices: {address}  code {app.state.site.devices.code}")
    config = uvicorn.Config(
        app, log_level="warning", access_log=False, timeout_graceful_shutdown=1,
        server_header=False, h11_max_incomplete_event_size=32_768, proxy_headers=False,
    )  # fmt: skip
    sys.setswitchinterval(_TURN_S)
    with closing(listening):
        _Server(config, app.state.site.news.close).run(sockets=[listening])


class _Server(uvicorn.Server):
    """Ends the streams of news first, so that it need not wait for them."""

    def __init__(self, config: uvicorn.Config, before_stop: Callable[[], None]) -> None:
        super().__init__(config)
        self._before_stop = before_stop

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        """End."""
        self._before_stop()
        await super().shutdown(sockets)


def _listening(host: str, port: int) -> socket.socket:
    found = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    found.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        found.bind((host, port))
        found.listen()  # who comes while the server starts waits instead of being turned away
    except OSError as error:
        found.close()
        message = f"port {port} cannot be used ({error.strerror}); choose another with --port"
        raise ServingError(message) from None
    return found


def home_addresses() -> tuple[str, ...]:
    """Addresses of this machine on the home network."""
    found = set()
    for family, _, _, _, place in socket.getaddrinfo(socket.gethostname(), None, socket.AF_INET):
        if family == socket.AF_INET:
            found.add(str(place[0]))
    with closing(socket.socket(socket.AF_INET, socket.SOCK_DGRAM)) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # RFC 5737: nobody's; nothing is sent
            found.add(str(probe.getsockname()[0]))
        except OSError:
            pass
    return tuple(sorted(a for a in found if not ipaddress.ip_address(a).is_loopback))


def _names(network: bool) -> tuple[str, ...]:
    name = socket.gethostname().lower()
    return (name, f"{name}.local") if network else ()
