"""Time of the search against the size of the space, as a plain picture."""

from __future__ import annotations

import math
from collections.abc import Sequence

WIDTH, HEIGHT = 640, 320
LEFT, RIGHT, TOP, BOTTOM = 64, 16, 40, 48
INK = "#1d2b36"


def chart(rows: Sequence[Sequence[str]]) -> str:
    """Draw best and front over the number of set-ups, sizes on a logarithmic axis.

    Parameters
    ----------
    rows : sequence of [set-ups, best, front]
        As printed.
    """
    sizes = [math.log10(float(row[0])) for row in rows]
    series = {name: [float(row[at]) for row in rows] for at, name in ((1, "best"), (2, "front"))}
    top = math.ceil(max(max(each) for each in series.values()) * 10) / 10
    first, last = math.floor(min(sizes)), math.ceil(max(sizes))

    def x(size: float) -> float:
        return LEFT + (size - first) / (last - first) * (WIDTH - LEFT - RIGHT)

    def y(seconds: float) -> float:
        return HEIGHT - BOTTOM - seconds / top * (HEIGHT - TOP - BOTTOM)

    parts = [_text(LEFT, 20, "Seconds to the proven answer, average client", "start")]
    for step in range(6):
        level = top * step / 5
        parts.append(_line([(LEFT, y(level)), (WIDTH - RIGHT, y(level))], "0.5", "#9aa5ad"))
        parts.append(_text(LEFT - 8, y(level) + 4, f"{level:.2f}", "end"))
    for power in range(first, last + 1, 2):
        parts.append(_text(x(power), HEIGHT - BOTTOM + 20, f"1e{power}", "middle"))
    parts.append(_text((LEFT + WIDTH) / 2, HEIGHT - 8, "set-ups that the rules leave", "middle"))
    for name, dash in (("best", ""), ("front", "6 4")):
        points = [(x(size), y(value)) for size, value in zip(sizes, series[name], strict=True)]
        parts.append(_line(points, "2", INK, dash))
        parts += [f'<circle cx="{a:.1f}" cy="{b:.1f}" r="3.5" fill="{INK}"/>' for a, b in points]
        words = "best set-up" if name == "best" else "front of three figures"
        parts.append(_text(points[0][0] + 8, points[0][1] - 8, words, "start"))
    body = "\n".join(parts)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" width="{WIDTH}" '
        f'height="{HEIGHT}" role="img" aria-label="Time of the search against the size of the '
        f'space">\n<rect width="{WIDTH}" height="{HEIGHT}" fill="#fbfaf7"/>\n{body}\n</svg>\n'
    )


def _line(points: Sequence[tuple[float, float]], width: str, colour: str, dash: str = "") -> str:
    drawn = " ".join(f"{a:.1f},{b:.1f}" for a, b in points)
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    return (
        f'<polyline points="{drawn}" fill="none" stroke="{colour}" stroke-width="{width}"{dashes}/>'
    )


def _text(x: float, y: float, words: str, anchor: str) -> str:
    return (
        f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}" font-family="Source Sans 3, '
        f'sans-serif" font-size="13" fill="{INK}">{words}</text>'
    )
