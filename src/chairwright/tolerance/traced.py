"""Numbers that carry their slopes: arithmetic on them follows every input at once."""

from __future__ import annotations

from typing import SupportsIndex, overload

import numpy as np

from chairwright.mass_points import FloatArray


class Traced(float):
    """A number with the slope of each input on it.

    Sums, products and quotients carry the slopes on; comparing, `min` and `max` go by the value
    alone, so that which of two ends counts is settled by the values as taken.

    Parameters
    ----------
    value : float
    slopes : ndarray, shape (inputs,)

    References
    ----------
    First principles: the chain rule, forward.
    """

    __array_ufunc__ = None
    slopes: FloatArray

    def __new__(cls, value: float, slopes: FloatArray) -> Traced:
        """Make one."""
        made = super().__new__(cls, value)
        made.slopes = slopes
        return made

    def __add__(self, other: float) -> Traced:
        """Sum."""
        return Traced(float(self) + float(other), self.slopes + slopes_of(other))

    __radd__ = __add__

    def __neg__(self) -> Traced:
        """Turn the sign."""
        return Traced(-float(self), -self.slopes)

    def __sub__(self, other: float) -> Traced:
        """Difference."""
        return Traced(float(self) - float(other), self.slopes - slopes_of(other))

    def __rsub__(self, other: float) -> Traced:
        """Difference."""
        return Traced(float(other) - float(self), slopes_of(other) - self.slopes)

    def __mul__(self, other: float) -> Traced:
        """Product."""
        mine, yours = float(self), float(other)
        return Traced(mine * yours, self.slopes * yours + slopes_of(other) * mine)

    __rmul__ = __mul__

    def __truediv__(self, other: float) -> Traced:
        """Quotient."""
        ratio, below = float(self) / float(other), float(other)
        return Traced(ratio, (self.slopes - slopes_of(other) * ratio) / below)

    def __rtruediv__(self, other: float) -> Traced:
        """Quotient."""
        ratio, below = float(other) / float(self), float(self)
        return Traced(ratio, (slopes_of(other) - self.slopes * ratio) / below)

    @overload
    def __round__(self, digits: None = None, /) -> int: ...
    @overload
    def __round__(self, digits: SupportsIndex, /) -> Traced: ...
    def __round__(self, digits: SupportsIndex | None = None, /) -> float:
        """Round the value; the slopes stay."""
        if digits is None:
            return round(float(self))
        return Traced(round(float(self), digits), self.slopes)


def slopes_of(value: float) -> FloatArray:
    """Slopes of a number; none for one that is not traced, shape (inputs,) or ()."""
    return value.slopes if isinstance(value, Traced) else np.asarray(0.0)
