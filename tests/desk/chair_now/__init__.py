"""Tests of the chair as it stands."""
