"""Rulers and bars drawn by matplotlib's Agg and made into scans, beside two strokes."""

import numpy as np

RULES = {
    "mm": [(float(k), 6.0 if k % 10 == 0 else 4.5 if k % 5 == 0 else 3.0) for k in range(61)],
    "half": [(k / 2, 6.0 if k % 20 == 0 else 4.8 if k % 10 == 0 else 3.6 if k % 2 == 0 else 2.4) for k in range(121)],
    "inch": [(k * 25.4 / 16, 7.0 if k % 16 == 0 else 5.5 if k % 8 == 0 else 4.5 if k % 4 == 0 else 3.5 if k % 2 == 0 else 2.5) for k in range(39)],
    "same": [(float(k), 3.0) for k in range(61)],
    "wandering": [(k + 0.12 * np.sin(2.4 * k), 6.0 if k % 10 == 0 else 3.0) for k in range(61)],
    "closing": [(k - 0.00012 * k * k, 6.0 if k % 10 == 0 else 4.5 if k % 5 == 0 else 3.0) for k in range(61)],
}  # fmt: skip


def drawn(marks=(), fields=(), *, dpi=300, degrees=0.0, finer=4, strokes=True, blur_um=30.0):
    """Light of a page of 90 by 40 mm: marks as (place, length), fields as (start, end, height), all in mm."""
    import cv2
    import matplotlib as mpl
    from matplotlib.backends.backend_agg import FigureCanvasAgg
    from matplotlib.figure import Figure
    from matplotlib.transforms import Affine2D

    figure = Figure(figsize=(90 / 25.4, 40 / 25.4), dpi=dpi * finer)
    canvas = FigureCanvasAgg(figure)
    axes = figure.add_axes((0, 0, 1, 1), xlim=(0, 90), ylim=(40, 0))
    axes.axis("off")
    turned = Affine2D().rotate_deg(degrees).translate(12, 6) + axes.transData
    with mpl.rc_context({"path.snap": False, "path.simplify": False}):
        for place, long in marks:
            axes.plot([place, place], [0, long], "k-", lw=0.2 / 25.4 * 72, transform=turned, solid_capstyle="butt")
        for start, end, high in fields:
            axes.fill([start, end, end, start], [0, 0, high, high], "k", lw=0, transform=turned)
        for row, width in ((29.0, 0.5), (34.0, 0.5)) if strokes else ():
            axes.plot([10, 80], [row, row + 1], "k-", lw=width / 25.4 * 72, solid_capstyle="butt")
        canvas.draw()
    cover = 1 - np.asarray(canvas.buffer_rgba())[..., 0] / np.float32(255)
    light = cv2.GaussianBlur(0.82 - 0.78 * cover, (0, 0), blur_um / (25400 / dpi / finer))
    size = (light.shape[1] // finer, light.shape[0] // finer)
    light = cv2.resize(light[: size[1] * finer, : size[0] * finer], size, interpolation=cv2.INTER_AREA)
    return light + np.random.default_rng(3).normal(0, 0.006, light.shape)
