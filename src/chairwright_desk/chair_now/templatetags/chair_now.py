"""A verdict's word with its mark, for words that come from a study."""

from __future__ import annotations

from collections.abc import Sequence

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString

from chairwright_desk.bench.bridge.words import NOMINAL, mark_of
from chairwright_desk.bench.templatetags.bench import mark
from chairwright_desk.chair_now.bridge.cautions import SITTING_STILL

register = template.Library()

SAID = "nominal values"


@register.simple_tag
def said(word: str | None) -> SafeString:
    """Return a verdict's mark and word; nothing for none."""
    return format_html("{} {}", mark(mark_of(word)), word or "")


@register.filter
def at(values: Sequence[str], place: int) -> str:
    """Return the value at a place."""
    return values[place]


@register.simple_tag
def nominal_words(*told: object) -> SafeString:
    """Return what ``holds on nominal values`` means, where the content says so; else nothing.

    Parameters
    ----------
    *told : object
        What the page shows, as plain data.
    """
    if not any(SAID in str(each) for each in told):
        return SafeString("")
    return format_html('<p class="help">{}</p>', NOMINAL)


@register.simple_tag
def sitting_still() -> str:
    """Return the caution that belongs beside tipping angles."""
    return SITTING_STILL
