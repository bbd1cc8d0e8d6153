"""A picture that is kept and touched up, not drawn anew for every move of a slider.

What never changes (axes, ticks, rock) is drawn once and kept as the background. What moves is
registered with :meth:`Canvas.moving` and drawn over a copy of that background. That is about
ten times quicker than a new matplotlib figure.
"""

from io import BytesIO
from typing import Any, TypeVar

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.backends.backend_agg import FigureCanvasAgg
from matplotlib.figure import Figure as MatplotlibFigure
from PIL import Image

DOTS_PER_INCH = 100
INK = "#1f2328"
SOFT_INK = "#59616b"

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

    def moving(self, artist: A) -> A:
        """Register an artist that changes between pictures; returns it."""
        artist.set_animated(True)
        self._moving.append(artist)
        self._moving.sort(key=lambda a: a.get_zorder())
        return artist

    @property
    def renderer(self) -> Any:
        """What measures texts for this canvas."""
        return self._agg.get_renderer()

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
        for artist in self._moving:
            if artist.get_visible():
                artist.draw(renderer)
        picture = Image.fromarray(_opaque(self._agg.buffer_rgba()))
        out = BytesIO()
        picture.save(out, format="png", compress_level=1)
        return out.getvalue()


def _opaque(rgba: Any) -> Any:
    """The colour channels alone: a quarter less to compress than with the transparency."""
    import numpy as np

    return np.ascontiguousarray(np.asarray(rgba)[..., :3])
