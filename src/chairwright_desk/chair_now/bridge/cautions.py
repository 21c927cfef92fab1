"""The caution that stands with every tipping angle, in the papers' own words."""

from __future__ import annotations

from chairwright.papers.cautions import STEADY, beside

SITTING_STILL = beside(STEADY, None)[-1]
