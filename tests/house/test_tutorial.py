"""The tutorial's client is fitted as the page says, before and after something is asked for."""

from __future__ import annotations

import re
from pathlib import Path

from chairwright.files.client import read_client
from chairwright.fitting.fit import fit_client
from chairwright.line.load import load_line

from .tree import ROOT

PAGE = (ROOT / "docs" / "tutorial" / "first-chair.md").read_text("utf-8")
(CLIENT,) = re.findall(r"^```yaml\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)
(ASKED,) = re.findall(r"^```\n(targets:\n.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)
LEAST_REAR_DEG = 12.0


def test_the_clients_chair_gets_harder_to_tip_back_when_that_is_asked(tmp_path: Path) -> None:
    path, line = tmp_path / "wr-014.yaml", load_line("everyday")
    rear = []
    for text in (CLIENT, CLIENT + ASKED):
        path.write_text(text, encoding="utf-8")
        fit = fit_client(read_client(path), line, objectives=None)
        assert fit.best is not None
        assert fit.setup is not None
        rear.append(fit.setup.figures["tip_rear_locked_deg"])
    before, after = rear
    assert before < LEAST_REAR_DEG <= after
