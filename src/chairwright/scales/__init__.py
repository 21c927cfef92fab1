"""Scales under the wheels: where the centre of mass is, measured."""
