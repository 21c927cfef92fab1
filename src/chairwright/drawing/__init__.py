"""Drawings: a scene in mm of the real chair, laid out on a sheet in paper mm, written as SVG."""
