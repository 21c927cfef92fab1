"""A verdict's word with its mark, for words that come from a study."""

from __future__ import annotations

from django import template
from django.utils.html import format_html
from django.utils.safestring import SafeString

from chairwright_desk.bench.bridge.words import mark_of
from chairwright_desk.bench.templatetags.bench import mark
from chairwright_desk.chair_now.bridge.cautions import SITTING_STILL

register = template.Library()


@register.simple_tag
def said(word: str | None) -> SafeString:
    """Return a verdict's mark and word; nothing for none."""
    return format_html("{} {}", mark(mark_of(word)), word or "")


@register.simple_tag
def sitting_still() -> str:
    """Return the caution that belongs beside tipping angles."""
    return SITTING_STILL
