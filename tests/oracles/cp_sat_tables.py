"""Variables, rules and tables of the constraint model."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence

import numpy as np
from ortools.sat.python import cp_model

from chairwright.line.model import Rule

from .cp_sat_axes import GEAR, JOINED, NothingAllowed, Tabulation
from .cp_sat_curves import Expression, Number
from .cp_sat_space import Array, Mask, Whole

COST = 10**6
"""Whole numbers for a cost of one."""


class Tables:
    """One variable for each axis, linked by tables; costs add up.

    Parameters
    ----------
    tabulation : Tabulation
    """

    def __init__(self, tabulation: Tabulation) -> None:
        self.tabulation = tabulation
        self.model = cp_model.CpModel()
        self.costs: list[Expression] = []
        self.at = {
            name: self.model.new_int_var(0, len(axis) - 1, name)
            for name, axis in tabulation.axes.items()
        }
        self._tables: dict[tuple[tuple[str, ...], bytes], dict[str, Number]] = {}
        self._open: dict[tuple[str, ...], Mask] = {}
        self._elements: dict[tuple[str, bytes], Number] = {}
        for name in JOINED:
            self._link(name)
        for rule in tabulation.space.line.rules:
            if not rule.choices <= set(GEAR):
                self._rule(rule)

    def _link(self, name: str) -> None:
        """A joined axis goes with the options it is made of."""
        axis = self.tabulation.axes[name]
        allowed = self.tabulation.space.allowed
        rows = [
            np.searchsorted(allowed[choice], axis.positions[:, column])
            for column, choice in enumerate(axis.choices)
        ]
        table = np.column_stack([*rows, np.arange(len(axis))])
        variables = [*(self.at[choice] for choice in axis.choices), self.at[name]]
        self.model.add_allowed_assignments(variables, table.tolist())

    def _rule(self, rule: Rule) -> None:
        """When every condition is met, every demand is met."""
        unmet = [~self._meets(name, codes) for name, codes in rule.when.items()]
        for name, codes in rule.need.items():
            self.model.add_bool_or([*unmet, self._meets(name, codes)])

    def _meets(self, name: str, codes: Iterable[str]) -> cp_model.IntVar:
        options = self.tabulation.space.line.choices[name].options
        allowed = self.tabulation.space.allowed[name]
        among = [at for at, place in enumerate(allowed) if options[place].code in codes]
        every = cp_model.Domain.from_values(range(len(allowed)))
        inside = cp_model.Domain.from_values(among)
        outside = every.intersection_with(inside.complement())
        literal = self.model.new_bool_var("")
        for domain, when in ((inside, literal), (outside, ~literal)):
            self.model.add_linear_expression_in_domain(self.at[name], domain).only_enforce_if(when)
        return literal

    def element(self, axis: str, values: Whole) -> Number:
        """A whole number for each combination of one axis.

        Parameters
        ----------
        axis : str
        values : ndarray of int
        """
        key = axis, values.tobytes()
        if key not in self._elements:
            self._elements[key] = self._new_element(axis, values)
        return self._elements[key]

    def _new_element(self, axis: str, values: Whole) -> Number:
        low, high = int(values.min()), int(values.max())
        if low == high:
            return low
        found = self.model.new_int_var(low, high, axis)
        self.model.add_element(self.at[axis], values.tolist(), found)
        return found

    def open_rows(self, axes: Sequence[str]) -> Mask:
        """Which combinations of some axes no table over the same axes has forbidden so far."""
        whole = np.ones(len(self.tabulation.grid(axes)), dtype=bool)
        return self._open.get(tuple(axes), whole)

    def columns(self, axes: Sequence[str], columns: Mapping[str, Whole]) -> dict[str, Number]:
        """Several whole numbers for each combination of some axes; forbidden ones are left out.

        Parameters
        ----------
        axes : sequence of str
        columns : mapping of str to ndarray of int
        """
        key = (*axes, *columns), b"".join(each.tobytes() for each in columns.values())
        if key not in self._tables:
            self._tables[key] = self._new_columns(axes, columns)
        return self._tables[key]

    def _new_columns(self, axes: Sequence[str], columns: Mapping[str, Whole]) -> dict[str, Number]:
        if len(axes) == 1:
            return {name: self.element(axes[0], values) for name, values in columns.items()}
        found: dict[str, Number] = {}
        changing, rows = {}, self.open_rows(axes)
        for name, every in columns.items():
            values = every[rows]
            low, high = int(values.min()), int(values.max())
            found[name] = low
            if low != high:
                changing[name] = values
                found[name] = self.model.new_int_var(low, high, name)
        if changing:
            variables = [*(self.at[each] for each in axes), *(found[name] for name in changing)]
            table = np.column_stack([self.tabulation.grid(axes)[rows], *changing.values()])
            self.model.add_allowed_assignments(variables, table.tolist())
        return found

    def tabulate(self, axes: Sequence[str], cost: Array) -> None:
        """Charge each combination of some axes; an infinite cost forbids it.

        Parameters
        ----------
        axes : sequence of str
        cost : ndarray
            Over the grid of the axes.
        """
        fine = np.isfinite(cost)
        self._open[tuple(axes)] = fine & self.open_rows(axes)
        if not fine.any():
            raise NothingAllowed
        whole = np.round(np.where(fine, cost, 0.0) * COST).astype(np.int64)
        charged = len(np.unique(whole[fine])) > 1
        if fine.all() and not charged:
            self.costs.append(int(whole[0]))
            return
        grid, variables = self.tabulation.grid(axes), [self.at[each] for each in axes]
        if charged:
            price = self.model.new_int_var(0, int(whole[fine].max()), "cost")
            self.costs.append(price)
            variables.append(price)
            grid = np.column_stack([grid, whole])
        else:
            self.costs.append(int(whole[fine][0]))
        self.model.add_allowed_assignments(variables, grid[fine].tolist())

    def charge(self, weight: float, steps: Expression, scale: float) -> None:
        """Charge what a preference is missed by, when it is missed.

        Parameters
        ----------
        weight : float
            Cost of one unit.
        steps : linear expression
            Distance outside the range; negative inside.
        scale : float
            Whole numbers of `steps` for one unit.
        """
        most = 10**4 * COST
        cost = self.model.new_int_var(0, most, "missed")
        factor = weight * COST / scale
        fine = 10 ** max(0, 6 - math.floor(math.log10(factor)))
        self.model.add(fine * cost >= round(factor * fine) * steps)
        self.costs.append(cost)
