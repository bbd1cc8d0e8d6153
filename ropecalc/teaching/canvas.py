"""A picture that is kept and touched up, not drawn anew for every move of a slider.

What never changes (axes, ticks, rock) is drawn once and kept as the background. What moves is
registered with :meth:`Canvas.moving` and drawn over a copy of that background. That is about
ten times quicker than a new matplotlib figure.
"""

import struct
import zlib
from typing import Any, TypeVar

import numpy as np
from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure as MatplotlibFigure

DOTS_PER_INCH = 100
INK = "#1f2328"
SOFT_INK = "#59616b"
_ABOVE = 5.0

A = TypeVar("A", bound=Artist)


class Canvas:
    """One picture of ``width`` by ``height`` pixels on white; gives its present state as a PNG."""

    def __init__(self, width: int, height: int) -> None:
        self.width, self.height = width, height
        self.figure = MatplotlibFigure(
            figsize=(width / DOTS_PER_INCH, height / DOTS_PER_INCH), dpi=DOTS_PER_INCH
        )
        self._agg = FigureCanvasAgg(self.figure)
        self._moving: list[Artist] = []
        self._above: set[Artist] = set()
        self._background: Any = None

    def axes(
        self,
        left: float,
        bottom: float,
        width: float,
        height: float,
        share_height: Axes | None = None,
    ) -> Axes:
        """New axes at a place given in pixels from the lower left corner."""
        place = (
            left / self.width,
            bottom / self.height,
            width / self.width,
            height / self.height,
        )
        axes = self.figure.add_axes(place, sharey=share_height)
        axes.tick_params(labelsize=8.5, colors=SOFT_INK, length=3)
        for spine in axes.spines.values():
            spine.set_color("#b4bac2")
        return axes

    def blank(self, left: float, bottom: float, width: float, height: float, title: str) -> Axes:
        """New axes without ticks, their ``title`` over the left end."""
        axes = self.axes(left, bottom, width, height)
        axes.set_xticks([])
        axes.set_yticks([])
        axes.set_title(title, fontsize=10.5, loc="left")
        return axes

    def sheet(self, left: float, bottom: float, width: float, height: float, title: str) -> Axes:
        """Blank axes that count in pixels from their lower left corner."""
        axes = self.blank(left, bottom, width, height, title)
        axes.set_xlim(0, width)
        axes.set_ylim(0, height)
        return axes

    def inset(self, left: float, bottom: float, width: float, height: float, title: str) -> Axes:
        """Small axes without ticks that lie over what moves in larger ones."""
        axes = self.axes(left, bottom, width, height)
        axes.set_xticks([])
        axes.set_yticks([])
        axes.set_title(title, fontsize=9, pad=3)
        self.float_above(axes)
        return axes

    def moving(self, artist: A) -> A:
        """Register an artist that changes between pictures; returns it."""
        artist.set_animated(True)
        self._moving.append(artist)
        return artist

    def float_above(self, axes: Axes) -> None:
        """Let ``axes`` lie over what moves in others: their ground, frame and title move, too."""
        axes.set_zorder(_ABOVE)
        for part in (axes.patch, *axes.spines.values(), axes.title):
            self._above.add(self.moving(part))

    @property
    def renderer(self) -> Any:
        """What measures texts for this canvas."""
        return self._agg.get_renderer()

    def _layer(self, artist: Artist) -> tuple[float, float]:
        """Drawn in this order: by axes, then within them."""
        axes = artist.axes
        if artist in self._above:  # matplotlib does not say whose frame it is
            return (_ABOVE, artist.get_zorder())
        return (axes.get_zorder() if axes is not None else 0.0, artist.get_zorder())

    def forget_background(self) -> None:
        """Draw the still part again at the next picture, because it was changed."""
        self._background = None

    def png(self) -> bytes:
        """The picture as it is now."""
        if self._background is None:
            self._agg.draw()
            self._background = self._agg.copy_from_bbox(self.figure.bbox)
        self._agg.restore_region(self._background)
        renderer = self._agg.get_renderer()
        for artist in sorted(self._moving, key=self._layer):
            if artist.get_visible():
                artist.draw(renderer)
        return _png(np.asarray(self._agg.buffer_rgba())[..., :3])


def _png(pixels: Any) -> bytes:
    """Rows of (red, green, blue) bytes as a PNG.

    Each row is stored as its difference from the row above, which for drawings is nearly all
    zeros: with that, the quickest compression is small enough and several times quicker than a
    general encoder that tries every filter on every row.
    """
    height, width = pixels.shape[:2]
    flat = np.ascontiguousarray(pixels).reshape(height, -1)
    rows = np.empty((height, flat.shape[1] + 1), np.uint8)
    rows[:, 0] = 2  # filter type "up"
    rows[0, 1:] = flat[0]
    np.subtract(flat[1:], flat[:-1], out=rows[1:, 1:])
    header = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    parts = ((b"IHDR", header), (b"IDAT", zlib.compress(rows.data, 1)), (b"IEND", b""))
    return b"\x89PNG\r\n\x1a\n" + b"".join(
        struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))
        for name, data in parts
    )
