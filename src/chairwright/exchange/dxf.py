"""A composed sheet as a DXF drawing: real millimetres, a layer for each kind of line.

The same primitives as in the SVG, carried back from the paper: what measures 450 mm on the chair
measures 450 in the drawing. Dimensions are lines and text, so that every program shows them alike.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from chairwright.drawing.palette import PENS, PenName
from chairwright.drawing.scene import Text
from chairwright.drawing.sheet import Placement, Sheet
from chairwright.exchange.dxf_shapes import MASK, TEXT, draw, layer_of

if TYPE_CHECKING:
    from ezdxf.document import Drawing

VERSION = "R2010"
MILLIMETRES = 4
FONT = "arial.ttf"


def dxf_text(sheet: Sheet) -> str:
    """Write a sheet as a DXF drawing (release 2010, ASCII) in real millimetres.

    Parameters
    ----------
    sheet : Sheet
        One that `drawing.compose.compose` has placed.

    Returns
    -------
    str
        The same sheet gives the same text: no day and no number of the machine stands in it.

    Raises
    ------
    ValueError
        When the sheet has no scale.
    """
    from ezdxf.filemanagement import new

    if sheet.placement is None:
        message = f"the sheet must have a scale; got none for {sheet.title!r}"
        raise ValueError(message)
    with _without_clock():
        document = new(VERSION, units=MILLIMETRES)
        _tables(document, sheet, sheet.placement.scale)
        for group in sheet.groups:
            for item in group.items:
                draw(document.modelspace(), item, sheet.placement)
        _extents(document, sheet, sheet.placement)
        for name in sorted(document.entitydb.dxf_types_in_use()):  # else in the order of a set
            document.classes.add_class(name)
        stream = io.StringIO()
        document.write(stream)
    return stream.getvalue()


@contextmanager
def _without_clock() -> Iterator[None]:
    """Let the library write fixed days and numbers, for as long as one drawing takes."""
    from ezdxf._options import options

    before = options.write_fixed_meta_data_for_testing
    options.write_fixed_meta_data_for_testing = True
    try:
        yield
    finally:
        options.write_fixed_meta_data_for_testing = before


def _tables(document: Drawing, sheet: Sheet, scale: float) -> None:
    """Line types, layers and the letters; dashes are as long as on paper at the sheet's scale."""
    document.styles.get("Standard").dxf.font = FONT
    document.set_wipeout_variables(frame=0)  # type: ignore[no-untyped-call]
    ratio = sheet.line_ratio
    for name in _pens(sheet):
        pen, kind = PENS[name], "Continuous"
        if pen.dashes:
            kind = layer_of(name)
            lengths = [ratio * scale * dash for dash in pen.dashes]
            signed = [-dash if at % 2 else dash for at, dash in enumerate(lengths)]
            document.linetypes.add(kind, [sum(lengths), *signed], description=name)
        layer = document.layers.add(layer_of(name), linetype=kind)
        layer.rgb = _rgb(name)
        layer.dxf.lineweight = _weight(ratio * pen.width_mm)
    for layer_name in (TEXT, MASK):
        document.layers.add(layer_name)
    document.layers.get(TEXT).rgb = _rgb("outline")


def _pens(sheet: Sheet) -> list[PenName]:
    """Kinds of line that the sheet has, in the order of the palette."""
    items = [item for group in sheet.groups for item in group.items]
    used = {item.pen for item in items if not isinstance(item, Text)}
    return [name for name in PENS if name in used]


def _rgb(name: PenName) -> tuple[int, int, int]:
    colour = PENS[name].colour
    red, green, blue = (int(colour[at : at + 2], 16) for at in (1, 3, 5))
    return red, green, blue


def _weight(width_mm: float) -> int:
    """The line weight that the format knows nearest to a width: hundredths of a millimetre."""
    from ezdxf.lldxf.const import VALID_DXF_LINEWEIGHTS

    return int(min(VALID_DXF_LINEWEIGHTS, key=lambda weight: abs(weight - 100.0 * width_mm)))


def _extents(document: Drawing, sheet: Sheet, placement: Placement) -> None:
    left, top = placement.real((0.0, 0.0))
    right, bottom = placement.real((sheet.width_mm, sheet.height_mm))
    document.header["$EXTMIN"] = (left, bottom, 0.0)
    document.header["$EXTMAX"] = (right, top, 0.0)
    document.header["$LIMMIN"] = (left, bottom)
    document.header["$LIMMAX"] = (right, top)
    middle = ((left + right) / 2.0, (bottom + top) / 2.0)
    document.set_modelspace_vport(height=1.05 * max(top - bottom, (right - left) / 1.5),
                                  center=middle)  # fmt: skip
