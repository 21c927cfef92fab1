"""The ledger's rows and the holes: many stand in every answer, so they are put together here."""

from __future__ import annotations

from html import escape

from django import template
from django.utils.safestring import SafeString, mark_safe

from chairwright_desk.bench.bridge import AskedShown, FigureShown, HolePicture, Spot
from chairwright_desk.bench.bridge.words import NOMINAL

register = template.Library()


@register.simple_tag
def mark(name: str) -> SafeString:
    """Return the mark beside a verdict's word, from ``bench/marks.html``; nothing without one."""
    return mark_safe(_mark(name))  # noqa: S308 - its own words and nothing else


@register.simple_tag
def nominal_means() -> str:
    """Return what ``holds on nominal values`` means."""
    return NOMINAL


@register.simple_tag
def figure(row: FigureShown) -> SafeString:
    """Return one row of the ledger: figure, value, verdict, target; opened: reason and source."""
    moved = ' class="moved"' if row.changed else ""
    parts = [
        f'<li{moved}><details id="fig-{escape(row.name)}"><summary>',
        f'<span class="what">{escape(row.label)}</span> ',
        f'<span class="value">{_changed(row)}{escape(row.value)}{_spread(row)} ',
        f'<span class="unit">{escape(row.unit)}</span></span>{_said(row)}</summary>',
        f'<div class="why">{"".join(_why(asked, row.unit) for asked in row.asked)}',
        f'<p class="source">Worked out from: {escape(row.source)}.</p></div></details></li>',
    ]
    return mark_safe("".join(parts))  # noqa: S308 - every value is escaped above


@register.simple_tag
def spots(picture: HolePicture, *, may_change: bool) -> SafeString:
    """Return the holes of a picture, each with its button; for reading only without the right."""
    off = "" if may_change else " disabled"
    told = "".join([_spot(picture.choice, spot, off) for spot in picture.spots])
    return mark_safe(told)  # noqa: S308 - every text is escaped in _spot


def _spot(choice: str, spot: Spot, off: str) -> str:
    code, label, pressed = escape(spot.code), escape(spot.label), spot.standing == "chosen"
    size = spot.size
    return (
        f'<g class="spot {spot.standing}" aria-hidden="true">{_hole(spot)}</g>'
        f'<foreignObject x="{spot.left}" y="{spot.top}" width="{size}" height="{size}">'
        f'<button xmlns="http://www.w3.org/1999/xhtml" class="hole" id="hole-{choice}-{code}" '
        f'name="pick" value="{choice}={code}" aria-label="{label}" title="{label}" '
        f'aria-pressed="{str(pressed).lower()}"{off}></button></foreignObject>'
    )


def _hole(spot: Spot) -> str:
    x, y = spot.x, spot.y
    if spot.standing == "chosen":
        disc = f'<circle class="disc" cx="{x}" cy="{y}" r="1.2"/>'
        return f'<circle cx="{x}" cy="{y}" r="2.1"/>{disc}'
    refused = f'<path d="M{x} {y}m-1.5 1.5l3 -3"/>' if spot.standing == "refused" else ""
    return f'<circle cx="{x}" cy="{y}" r="1.3"/>{refused}'


def _mark(name: str) -> str:
    if not name:
        return ""
    return (
        f'<svg class="verdict {escape(name)}" width="16" height="16" aria-hidden="true" '
        f'focusable="false"><use href="#mark-{escape(name)}"/></svg>'
    )


def _changed(row: FigureShown) -> str:
    return f'<span class="by">{escape(row.changed)}</span> ' if row.changed else ""


def _spread(row: FigureShown) -> str:
    return f' <span class="spread">{escape(row.spread)}</span>' if row.spread else ""


def _said(row: FigureShown) -> str:
    if not row.mark:
        return ""
    asks = "; ".join(f"{each.kind} {each.range}" for each in row.asked)
    return (
        f' <span class="judged"><span class="said-of">{_mark(row.mark)} {escape(row.word)}</span> '
        f'<span class="asks">{escape(asks)}</span></span>'
    )


def _why(asked: AskedShown, unit: str) -> str:
    place = f" Asked by: {escape(asked.place)}." if asked.place else ""
    source = f' <span class="source">Source: {escape(asked.source)}.</span>' if asked.source else ""
    reason = asked.reason[:1].upper() + asked.reason[1:]
    return (
        f"<p><strong>{escape(asked.kind.capitalize())} {escape(asked.range)} {escape(unit)}"
        f"</strong>: {escape(asked.word)}. {escape(reason)}.{place}{source}</p>"
    )
