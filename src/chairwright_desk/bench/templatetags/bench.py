"""The ledger's rows: some seventy stand in every answer, so they are put together here."""

from __future__ import annotations

from django import template
from django.utils.html import escape
from django.utils.safestring import SafeString, mark_safe

from chairwright_desk.bench.bridge import AskedShown, FigureShown
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
