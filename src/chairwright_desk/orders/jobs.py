"""Long work of orders: all papers of a revision as one zip."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from django.db import transaction

from chairwright_desk.jobs.work import Progress, work
from chairwright_desk.orders.bridge import Asked, whole_pack
from chairwright_desk.orders.making import worked_of
from chairwright_desk.orders.models import Order, PaperPack
from chairwright_desk.orders.papers import beside_of, file_stem
from chairwright_desk.orders.zips import zipped

PACK = "orders.pack"


@work(PACK)
def pack(arguments: Mapping[str, Any], progress: Progress) -> dict[str, Any]:
    """Typeset papers and keep them as one zip, in place of the owner's last one of this order.

    Parameters
    ----------
    arguments : mapping
        ``order`` and ``owner`` (ids), ``number`` (of the revision), ``names`` (of papers) and
        ``asked`` (fields of `Asked`).
    progress : Progress
    """
    order = Order.objects.select_related("client").get(pk=arguments["order"])
    number, names = arguments["number"], tuple(arguments["names"])
    _, worked = worked_of(order, number)
    asked, beside = Asked(**arguments["asked"]), beside_of(order, worked, names)
    made = whole_pack(names, worked, asked, beside, progress)
    progress(len(names), len(names), "putting them into one file")
    stem = file_stem(order, number)
    content = zipped({f"{stem}-{name}.pdf": each for name, each in made.items()})
    with transaction.atomic():
        mine = PaperPack.objects.filter(order=order, owner=arguments["owner"])
        mine.delete()
        row = PaperPack.objects.create(
            order=order,
            number=number,
            owner_id=arguments["owner"],
            names=list(names),
            asked=arguments["asked"],
            content=content,
        )
    return {"pack": row.pk}
