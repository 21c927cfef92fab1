"""How a field looks, in one place."""

from __future__ import annotations

from django.forms.renderers import TemplatesSetting


class DeskRenderer(TemplatesSetting):
    """Label, help, input and remark of each field as ``base/field.html`` lays them out."""

    field_template_name = "base/field.html"
