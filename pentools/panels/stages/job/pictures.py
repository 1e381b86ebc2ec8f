"""The pictures panel: small views of the pictures, cleaned of what a camera writes into them."""

from __future__ import annotations

import base64
import io
from html import escape
from pathlib import Path

from pentools.panels.stage import PanelResult, StagePanel
from pentools.record.layout import has_picture
from pentools.record.saying import say
from pentools.record.stages.job.ending_kinds import PICTURE

__all__ = ["PicturesPanel"]

THUMBNAIL_PX = 320


class PicturesPanel(StagePanel):
    """Shows the pictures that are listed."""

    def result(self) -> PanelResult:
        """How many pictures there are of each moment, and small views."""
        log = [logged.values for logged in self.job.log(PICTURE)]
        if not log:
            return PanelResult(
                "No picture is listed yet. Put the files into the job's photos folder, then name them here."
            )
        views = "".join(
            _view(self.job.folder / "photos" / picture.photo, picture.shows or "")
            for picture in log[-8:]
            if picture.photo is not None
        )
        return PanelResult(say(self.job, self.stage.key), table=views)


def _view(path: Path, alt: str) -> str:
    from PIL import Image, ImageOps, UnidentifiedImageError

    if not has_picture(path.parents[1], path.name):
        return f'<p class="pt-error">✗ photos/{escape(path.name)} is not there.</p>'
    try:
        with Image.open(path) as picture:
            small = ImageOps.exif_transpose(picture).convert("RGB")
    except (UnidentifiedImageError, OSError):
        return f'<p class="pt-error">✗ photos/{escape(path.name)} is not a picture that can be read.</p>'
    small.thumbnail((THUMBNAIL_PX, THUMBNAIL_PX))
    held = io.BytesIO()
    small.save(held, "JPEG", quality=75)
    data = base64.b64encode(held.getvalue()).decode()
    return f'<img src="data:image/jpeg;base64,{data}" alt="{escape(alt, quote=True)}" style="margin:0 8px 8px 0">'
