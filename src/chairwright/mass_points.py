"""Point masses on arrays of set-ups."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
MovesWith = Literal["frame", "rear_wheels", "casters"]


@dataclass(frozen=True)
class MassPoints:
    """One named point mass, for one set-up or for an array of set-ups.

    Parameters
    ----------
    name : str
        The part or body segment, for people to read.
    mass_kg : array_like, shape (n,) or scalar [kg]
    x_mm, y_mm, z_mm : array_like, shape (n,) or scalar [mm]
        Place in the axes that the maker of the list names (frame or floor).
    moves_with : {"frame", "rear_wheels", "casters"}
        Which body of the chair carries it when the frame tips about the axle.
    """

    name: str
    mass_kg: FloatArray | float
    x_mm: FloatArray | float
    y_mm: FloatArray | float
    z_mm: FloatArray | float
    moves_with: MovesWith = "frame"
