"""What of a client counts today: texts, weighing in use, and a bench on which they meet."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from chairwright_desk.bench.bridge import Bench, open_bench
from chairwright_desk.bench.texts import Texts, line_of
from chairwright_desk.chair_now.bridge import InputError, Pads, weighed_bench
from chairwright_desk.chair_now.models import Weighing
from chairwright_desk.chair_now.written import problem_words
from chairwright_desk.clients.models import Client

Data = dict[str, Any]


def pads_of(weighing: Weighing) -> Pads:
    """All that a weighing is worked out from.

    Parameters
    ----------
    weighing : Weighing
    """
    return Pads(
        text=weighing.text,
        client=weighing.client_text,
        line=line_of(weighing.line),
        codes=weighing.codes,
        extras=tuple(weighing.extras),
        dated=f"{weighing.weighed_on:%Y-%m-%d}",
    )


def weighing_in_use(client: Client | str) -> Weighing | None:
    """The newest weighing that counts for a client's set-ups.

    Parameters
    ----------
    client : Client or str
        The client or its id.
    """
    return Weighing.objects.filter(client=client, in_use=True).first()


def weighed_or_not(client: Client | str, bench: Bench) -> tuple[Bench, Weighing | None, str]:
    """A bench with the client as weighed, where a weighing counts.

    Parameters
    ----------
    client : Client or str
        The client or its id.
    bench : Bench
        With the client as estimated.

    Returns
    -------
    tuple of Bench, Weighing or None, and str
        The weighing that counts, and why one in use does not; empty when it does.
    """
    weighing = weighing_in_use(client)
    if weighing is None:
        return bench, None, ""
    try:
        return weighed_bench(bench, pads_of(weighing)), weighing, ""
    except InputError as error:
        return bench, None, problem_words(error.problems[0])


def snapshot(client: Client, texts: Texts, **more: Any) -> Data:
    """What a study is worked out from, as it is today.

    Parameters
    ----------
    client : Client
    texts : Texts
    **more : object
        Added as it is.
    """
    pads = pads_kept(client, texts)
    return {"client": texts.client, "places": texts.places, "pads": pads, **more}


def pads_kept(client: Client, texts: Texts) -> Data | None:
    """The weighing that counts today, to be kept; None when none does.

    Parameters
    ----------
    client : Client
    texts : Texts
    """
    _, weighing, _ = weighed_or_not(client, open_bench(texts.client, "everyday"))
    if weighing is None:
        return None
    return {
        "text": weighing.text,
        "client": weighing.client_text,
        "line": weighing.line,
        "codes": weighing.codes,
        "extras": weighing.extras,
        "dated": f"{weighing.weighed_on:%Y-%m-%d}",
    }


def bench_from(asked: Mapping[str, Any], *, extras: tuple[str, ...] | None = None) -> Bench:
    """The bench of a study, from what it holds.

    Parameters
    ----------
    asked : mapping
        From `snapshot`, with ``line``.
    extras : tuple of str or None
        None for those that the client file names.
    """
    bench = open_bench(asked["client"], line_of(asked["line"]), asked["places"], extras)
    pads = asked["pads"]
    if pads is None:
        return bench
    held = {**pads, "line": line_of(pads["line"]), "extras": tuple(pads["extras"])}
    return weighed_bench(bench, Pads(**held))
