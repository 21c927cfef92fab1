"""One thing that can be off: by how much, on whose word, and what would make it surer."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from chairwright.chair.weighed import COVERAGE

Shape = Literal["normal", "limits"]
"""How errors lie: ``normal`` about the value, the half width being two standard uncertainties
(a repeated reading, an estimate); ``limits``, anywhere between two limits alike (what a drawing
or a maker allows; JCGM 100:2008, 4.3.7)."""

Kind = Literal["measured", "estimated", "body", "load", "chair", "place"]

NO_SOURCE = "common practice, no source"


@dataclass(frozen=True)
class Input:
    """One thing that can be off.

    Parameters
    ----------
    key : str
        Unique among the inputs of a set-up.
    label : str
        For people, in lower case.
    kind : {"measured", "estimated", "body", "load", "chair", "place"}
    half : float
        Half width, in the unit.
    unit : str
        Empty for a share of the value.
    source : str
        On whose word.
    again : str
        What makes it surer, as a whole sentence; empty when nothing does before the chair is built.
    shape : {"normal", "limits"}
    """

    key: str
    label: str
    kind: Kind
    half: float
    unit: str
    source: str
    again: str = ""
    shape: Shape = "normal"

    @property
    def standard(self) -> float:
        """Standard uncertainty, in the unit.

        References
        ----------
        JCGM 100:2008: 4.3.7 for limits, a / sqrt(3); 6.3.3 for half widths of coverage factor 2.
        """
        return self.half / (math.sqrt(3.0) if self.shape == "limits" else COVERAGE)
