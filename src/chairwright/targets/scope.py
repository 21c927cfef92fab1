"""When a dimension can no longer be checked with the standard's loader gauge."""

from __future__ import annotations

GAUGE_USER_KG = 120.0
GAUGE_SEAT_WIDTH_MM = 212.0


def gauge_note(body_mass_kg: float, seat_width_mm: float) -> str:
    """Say when the dimensions of a chair are not those of ISO 7176-7.

    Parameters
    ----------
    body_mass_kg : float [kg]
    seat_width_mm : float [mm]

    Returns
    -------
    str
        Empty for users up to 120 kg and seats at least 212 mm wide.

    References
    ----------
    ISO 7176-7:1998, scope (scope page of the standard only).
    """
    outside = []
    if body_mass_kg > GAUGE_USER_KG:
        outside.append(f"user {body_mass_kg:g} kg, above {GAUGE_USER_KG:g} kg")
    if seat_width_mm < GAUGE_SEAT_WIDTH_MM:
        outside.append(f"seat {seat_width_mm:g} mm wide, below {GAUGE_SEAT_WIDTH_MM:g} mm")
    if not outside:
        return ""
    return f"not to ISO 7176-7 ({'; '.join(outside)}; scope page of the standard only)"
