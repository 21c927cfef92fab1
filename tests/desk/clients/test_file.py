"""The first page of a client file leads on."""

from __future__ import annotations

import re

from ..kit.world import World


def test_the_file_leads_through_the_work_in_its_order(world: World) -> None:
    address = f"/clients/{world.client.pk}/"
    fitter, builder = (world.visitor(role).get(address) for role in ("clinician", "builder"))
    way = fitter.content.decode().partition("The work goes this way")[2]
    links = re.findall(r'href="/clients/[^/]+/([a-z-]+)/"', way)[:4]
    for link in links:
        assert world.visitor("clinician").get(f"{address}{link}/").status_code == 200
    assert links == ["measures", "places", "targets", "set-ups"]
    assert "The work goes this way" not in builder.content.decode()
