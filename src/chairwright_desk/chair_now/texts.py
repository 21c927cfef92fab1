"""What the chair as it stands says to the bench: the client as weighed."""

from __future__ import annotations

from chairwright_desk.bench.bridge import Bench
from chairwright_desk.chair_now.known import weighed_or_not
from chairwright_desk.clients.models import Client


def weighed(client: Client, bench: Bench) -> Bench:
    """A bench with the client as weighed; the same bench when no weighing counts.

    Parameters
    ----------
    client : Client
    bench : Bench
    """
    return weighed_or_not(client, bench)[0]
