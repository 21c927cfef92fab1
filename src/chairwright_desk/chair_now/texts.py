"""What the chair as it stands says to the bench: the client as weighed."""

from __future__ import annotations

from chairwright_desk.bench.bridge import Bench
from chairwright_desk.chair_now.known import weighed_or_not


def weighed(client_id: str, bench: Bench) -> Bench:
    """A bench with the client as weighed; the same bench when no weighing counts.

    Parameters
    ----------
    client_id : str
    bench : Bench
    """
    return weighed_or_not(client_id, bench)[0]
