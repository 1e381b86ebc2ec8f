"""A whole A5 page at 600 dots an inch, from file to result, against a medial axis of its mask; and the peak of memory."""

import resource
import sys
import tempfile
import time
from pathlib import Path

import numpy as np


def page(path):
    """A hundred and more strokes on 148 by 210 mm."""
    import cv2
    from PIL import Image

    light = np.full((4961, 3496), 235, np.uint8)
    for row in range(60):
        y = 120 + 78 * row
        x = np.arange(150, 3350, 8)
        wave = y + (14 * np.sin(x / 60) if row % 3 == 0 else 0.01 * row * (x - 150) / 10)
        points = np.round(16 * np.stack([x, wave * np.ones(len(x))], axis=1)).astype(np.int32)
        cv2.polylines(light, [points], False, 40, 10 + row % 8, cv2.LINE_AA, 4)
    noisy = cv2.GaussianBlur(light, (0, 0), 0.8) + np.random.default_rng(1).normal(0, 2, light.shape)
    Image.fromarray(np.clip(noisy, 0, 255).astype(np.uint8)).save(path, dpi=(600, 600), compress_level=1)


def main():
    from pentools import measure_lines

    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "page.png"
        page(path)
        measure_lines("sample")  # libraries are loaded once
        start = time.perf_counter()
        answer = measure_lines(path)
        ours = time.perf_counter() - start
        peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e6
        print(
            f"{len(answer.data['strokes'])} strokes, {answer.data['length_mm'] / 1000:.1f} m: {ours:.2f} s; peak {peak:.2f} GB"
        )
        if "--alone" in sys.argv:
            return
        from PIL import Image
        from skimage.morphology import medial_axis

        with Image.open(path) as opened:
            mask = np.asarray(opened) < 140
        start = time.perf_counter()
        medial_axis(mask)
        theirs = time.perf_counter() - start
        print(f"medial axis of the mask alone: {theirs:.2f} s; ratio {ours / theirs:.2f}")


if __name__ == "__main__":
    main()
