"""A small client file and a small set-up file, to be varied line by line."""

from __future__ import annotations

from pathlib import Path

from chairwright.line.choices import CHOICES

CLIENT = """\
format: chairwright client 1
reference: T-1
sex: female
propulsion: hands
measures:
  stature: 168 cm
  body_mass: 62 kg
  hip_width: 15 1/2 in
"""
"""Eight lines; what a test adds starts on line 9."""


def client_file(folder: Path, more: str = "", swap: tuple[str, str] = ("", "")) -> Path:
    """Write the small client file with lines added, or with one text swapped for another."""
    text = CLIENT.replace(*swap) if swap[0] else CLIENT
    path = folder / "client.yaml"
    path.write_text(text + more, encoding="utf-8")
    return path


def setup_file(folder: Path, more: str = "", swap: tuple[str, str] = ("", "")) -> Path:
    """Write a set-up file with the code X1 for every choice, varied likewise."""
    rows = ["format: chairwright set-up 2", "client: client.yaml", "line: everyday", "choices:"]
    text = "\n".join([*rows, *(f"  {name}: X1" for name in CHOICES)]) + "\n"
    path = folder / "setup.yaml"
    path.write_text((text.replace(*swap) if swap[0] else text) + more, encoding="utf-8")
    return path
