"""What public codes say of a ramp: slope, length and rise of a flight, width, landings, rails."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from chairwright.places.code_clauses import (
    SLACK,
    Ruling,
    applies,
    clause,
    from_flag,
    length,
    read_limit,
    ruling,
    slope,
    stated,
)
from chairwright.places.kinds import Ramp
from chairwright.tables.load import load_table

_WIDTHS = {
    "ada_2010": ("ada_ramp_width",),
    "england_ad_m": ("adm_ramp_width_public", "adm_ramp_width_dwelling"),
    "ontario_3_8": ("obc_ramp_width", "obc_ramp_width_dwelling"),
}
_LANDINGS = {
    "ada_2010": "ada_landing_length",
    "england_ad_m": "adm_landing_length",
    "ontario_3_8": "obc_landing_length",
    "ireland_tgd_m": "irl_landing_length",
}


@dataclass(frozen=True)
class Flight:
    """One row of slopes and how long or high a flight may be there.

    Parameters
    ----------
    code, number, tag, note : str
    steeper_than, slope_to : float [rise by run]
        The row counts above the first and up to the second. What is gentler than the first
        row of a code is no ramp there.
    length_to_mm, rise_to_mm : float or None [mm]
        None is no limit.
    printed_slope, printed_length, printed_rise : str
        As printed.
    site, outside : str
        ``any``, or what the row counts for.
    """

    code: str
    number: str
    tag: str
    note: str
    steeper_than: float
    slope_to: float
    length_to_mm: float | None
    rise_to_mm: float | None
    printed_slope: str
    printed_length: str
    printed_rise: str
    site: str
    outside: str

    def ruling(self, item: str, holds: bool | None, asked: str, found: str) -> Ruling:
        """Return what this row says.

        Parameters
        ----------
        item : str
        holds : bool or None
        asked, found : str
        """
        words = (from_flag(holds), asked, found)
        return Ruling(self.code, self.number, item, *words, self.tag, self.note)


@cache
def flights() -> tuple[Flight, ...]:
    """Return every row of the table of flights, as printed."""
    return tuple(
        Flight(
            row["code"], row["clause"], row["tag"], row["note"],
            read_limit(row["steeper_than"] or "0", "ratio"), read_limit(row["slope_to"], "ratio"),
            read_limit(row["length_to_m"], "m") if row["length_to_m"] else None,
            read_limit(row["rise_to_in"], "in") if row["rise_to_in"] else None,
            row["slope_to"], f"{row['length_to_m']} m", f"{row['rise_to_in']} in",
            row["site"], row["outside"],
        )
        for row in load_table("access", "ramp_flights")
    )  # fmt: skip


def ramp_rulings(ramp: Ramp, code: str) -> tuple[Ruling, ...]:
    """Judge one run of a ramp under one code.

    Parameters
    ----------
    ramp : Ramp
    code : str
        Key of a code.

    Returns
    -------
    tuple of Ruling
        Empty when the code says nothing about ramps, or nothing about ramps on such a site.
    """
    found = [*_flight_rulings(ramp, code), *_width_rulings(ramp, code)]
    found += _landing_rulings(ramp, code)
    more = _MORE.get(code)
    return tuple(found + (more(ramp) if more else []))


def _flight_rulings(ramp: Ramp, code: str) -> list[Ruling]:
    rows = [row for row in flights() if row.code == code and row.site in ("any", ramp.site)]
    if not rows:
        return []
    if any(row.outside != "any" for row in rows):
        return [_inside_or_outside(ramp, rows)]
    steepness = ramp.slope.ratio
    row = next((each for each in rows if steepness <= each.slope_to + SLACK), None)
    if row is None:
        last = rows[-1]
        return [last.ruling("slope", False, _slope_asked(last), slope(steepness))]
    kept = row.ruling("slope", True, _slope_asked(rows[-1]), slope(steepness))
    gentle = steepness < row.steeper_than - SLACK
    return [kept] if gentle else [kept, *_length_and_rise(ramp, row)]


def _length_and_rise(ramp: Ramp, row: Flight) -> list[Ruling]:
    found, until = [], f"at a slope up to {row.printed_slope}"
    if row.length_to_mm is not None:
        asked = f"flight length at most {row.printed_length} {until}"
        holds = ramp.run_mm <= row.length_to_mm + SLACK
        found.append(row.ruling("flight length", holds, asked, length(ramp.run_mm)))
    if row.rise_to_mm is not None:
        asked = f"rise at most {row.printed_rise} ({row.rise_to_mm:.5g} mm) {until}"
        holds = ramp.rise_mm <= row.rise_to_mm + SLACK
        found.append(row.ruling("rise", holds, asked, length(ramp.rise_mm, ramp, "rise_mm")))
    return found


def _inside_or_outside(ramp: Ramp, rows: list[Flight]) -> Ruling:
    """One limit for each: not known only where it matters which of the two it is."""
    here = [row for row in rows if ramp.outside is None or row.outside == str(ramp.outside).lower()]
    kept = {ramp.slope.ratio <= row.slope_to + SLACK for row in here}
    holds = kept.pop() if len(kept) == 1 else None
    asked = " or ".join(f"{_slope_asked(row)} {row.note}" for row in here)
    return here[-1].ruling("slope", holds, asked, slope(ramp.slope.ratio))


def _slope_asked(row: Flight) -> str:
    return f"slope at most {row.printed_slope}"


def _width_rulings(ramp: Ramp, code: str) -> list[Ruling]:
    found = length(ramp.width_mm, ramp, "width_mm")
    return [
        ruling(key, ramp.width_mm, found)
        for key in _WIDTHS.get(code, ())
        if applies(key, ramp.site, ramp.building)
    ]


def _landing_rulings(ramp: Ramp, code: str) -> list[Ruling]:
    key = _LANDINGS.get(code)
    if key is None:
        return []
    found = length(ramp.landing_length_mm, ramp, "landing_length_mm")
    return [ruling(key, ramp.landing_length_mm, found)]


def _ada(ramp: Ramp) -> list[Ruling]:
    across = None if ramp.cross_slope is None else ramp.cross_slope.ratio
    return [
        ruling("ada_ramp_cross_slope", across, slope(across)),
        _ada_landing_width(ramp),
        _ada_rails(ramp),
        stated(clause("ada_edge"), from_flag(ramp.edge_protection), _there(ramp.edge_protection)),
    ]


def _ada_landing_width(ramp: Ramp) -> Ruling:
    wide = ramp.landing_width_mm
    found = length(wide, ramp, "landing_width_mm")
    if ramp.turns:
        return ruling("ada_landing_turn_width", wide, found)
    holds = None
    if wide is not None and ramp.width_mm is not None:
        holds = wide >= ramp.width_mm - SLACK
    asked = f"landing width at least that of the ramp, {length(ramp.width_mm)}"
    return stated(clause("ada_landing_width"), from_flag(holds), found, asked=asked)


def _ada_rails(ramp: Ramp) -> Ruling:
    each = clause("ada_rails_above")
    low = each.limit is not None and ramp.rise_mm <= each.limit + SLACK
    asked = f"handrails on both sides where the rise is above {each.printed}"
    found = f"rise {length(ramp.rise_mm, ramp, 'rise_mm')}, rails: {ramp.rails or 'not known'}"
    holds = True if low else _both(ramp)
    return stated(each, from_flag(holds), found, asked=asked)


def _both(ramp: Ramp) -> bool | None:
    return None if ramp.rails is None else ramp.rails == "both"


def _england(ramp: Ramp) -> list[Ruling]:
    return [
        ruling("adm_ramp_going", ramp.run_mm, length(ramp.run_mm)),
        ruling("adm_ramp_rise", ramp.rise_mm, length(ramp.rise_mm, ramp, "rise_mm")),
        stated(
            clause("adm_rails"),
            from_flag(_both(ramp)),
            f"rails: {ramp.rails or 'not known'}",
            asked="handrails on both sides",
        ),
    ]


def _ontario(ramp: Ramp) -> list[Ruling]:
    found = length(ramp.landing_width_mm, ramp, "landing_width_mm")
    return [ruling("obc_landing_width", ramp.landing_width_mm, found)]


def _there(flag: bool | None) -> str:
    return "not known" if flag is None else "there" if flag else "none"


_MORE: dict[str, Callable[[Ramp], list[Ruling]]] = {
    "ada_2010": _ada,
    "england_ad_m": _england,
    "ontario_3_8": _ontario,
}
