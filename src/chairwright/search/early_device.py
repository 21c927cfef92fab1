"""How far behind the axle an anti-tip device must reach, before one is chosen."""

from __future__ import annotations

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.mass_points import FloatArray
from chairwright.search.look_ahead import OptionLookAhead
from chairwright.search.space import Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken

CONTACT = "pitch_to_anti_tip_deg"
BEHIND = "device behind"


class EarlyDevice:
    """Least reach of the devices with which the chair stands and the musts hold.

    Parameters
    ----------
    space : Space
    musts : tuple of Target
    """

    def __init__(self, space: Space, musts: tuple[Target, ...]) -> None:
        self._ahead = OptionLookAhead(space, CONTACT)
        self._musts = [must for must in musts if must.figure == CONTACT]

    def behind(self, rows: Rows) -> FloatArray:
        """Least place of the device's back edge behind the axle [mm], shape (n,).

        0 where a set-up may do without a device. It is carried with the rows until the choice
        is made.
        """
        if "device_x" in rows.columns:
            return _reach(rows)
        if BEHIND not in rows.columns:
            least = np.full(len(rows), np.inf)
            for _, trial, contact, stands in self._ahead.trials(rows):
                fine = stands
                for must in self._musts:
                    fine = fine & ~broken(must, contact)
                least = np.minimum(least, np.where(fine, _reach(trial), np.inf))
            rows[BEHIND] = np.where(np.isfinite(least), least, 0.0)
        return rows[BEHIND]


def _reach(rows: Rows) -> FloatArray:
    return np.maximum(np.nan_to_num(rows["device_radius"] - rows["device_x"]), 0.0)
