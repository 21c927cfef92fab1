"""The log tells where, never what."""

from __future__ import annotations

import logging

from chairwright_desk.base.logs import QuietFormatter

VALUE = "Wilhelmine"


def told(message: str, *values: object, name: str = "django.db") -> str:
    try:
        int(VALUE)
    except ValueError as error:
        fault = (type(error), error, error.__traceback__)
    record = logging.LogRecord(name, logging.ERROR, __file__, 1, message, values, fault)
    return QuietFormatter().format(record)


def test_neither_values_nor_messages_of_faults_are_written() -> None:
    text = told("no place for %s", VALUE)
    assert VALUE not in text
    assert "ValueError" in text
    assert "test_logs.py:" in text


def test_a_text_made_of_values_is_not_written() -> None:
    assert VALUE not in told(f"no place for {VALUE}")


def test_the_desks_own_fixed_text_is_written() -> None:
    assert "work failed" in told("work failed", name="chairwright_desk")
