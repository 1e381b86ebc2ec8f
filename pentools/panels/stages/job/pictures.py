"""The pictures panel: thumbnails to choose from, one press for an ordinary picture, and the checklist of views."""

from __future__ import annotations

import functools
import re
from collections.abc import Iterator
from html import escape
from pathlib import Path, PurePath
from typing import TYPE_CHECKING, Any

import ipywidgets as widgets

from pentools.errors import InputError
from pentools.panels.guard import guarded
from pentools.panels.picture_in import lay_in
from pentools.panels.picture_picker import EndsPicker, ThumbnailPicker
from pentools.panels.stage import PanelResult, StagePanel
from pentools.pictures.matching import Unlike
from pentools.pictures.outgoing import encoded
from pentools.pictures.pairing import half_and_half, pair_of
from pentools.pictures.reading import glance, look_at, read_picture
from pentools.record.layout import has_picture, pictures_in
from pentools.record.saying import say
from pentools.record.stages.job.agree import consents
from pentools.record.stages.job.ending_kinds import MOMENTS, PICTURE, Picture
from pentools.record.stages.job.pictures import USUAL_VIEWS, lacking, shown_by, views_of

if TYPE_CHECKING:
    from pentools.record.forms import Form
    from pentools.record.job import Job
    from pentools.record.kinds import Kind, Stage

__all__ = ["PicturesPanel", "view_in_name"]

THUMBNAIL_PX, LARGE_PX, PAIR_PX = 320, 1100, 900
MOST_THUMBNAILS = 60
_NOT_LISTED = "not listed yet"


class PicturesPanel(StagePanel):
    """Thumbnails of the folder, those not listed yet first; a press on one and on a moment lists it."""

    def __init__(self, job: Job, stage: Stage, sheet: Any) -> None:
        self.picker = ThumbnailPicker()
        self.upload = widgets.FileUpload(accept="image/*", multiple=True, description="From the computer …")
        self.again = widgets.Button(description="Look into photos/ again")
        self.about = widgets.HTML()
        self.view = widgets.Combobox(description="View", placeholder="such as side", ensure_option=False)
        self.everybody = widgets.Checkbox(description="for everybody too", indent=False)
        self.moments = {key: widgets.Button(description=words) for key, words in MOMENTS}
        self.measure = widgets.ToggleButton(description="set a length in it …", value=False)
        self.ends = EndsPicker()
        self.ends_part = widgets.VBox(layout={"display": "none"})
        self.views = widgets.HTML()
        self._draft = ""
        super().__init__(job, stage, sheet)
        self._wire()

    def _wire(self) -> None:
        status = self.forms[PICTURE.key].status
        self.picker.observe(guarded(status, self.take_up), "chosen")
        self.upload.observe(guarded(status, self.take_in), "value")
        self.again.on_click(guarded(status, self.refresh_forms))
        self.view.observe(guarded(status, self._view_said), "value")
        for key, button in self.moments.items():
            button.add_class("pt-main")
            button.on_click(guarded(status, functools.partial(self.list_it, key)))
        self.measure.observe(guarded(status, self._show_ends), "value")
        self.ends.observe(guarded(status, self._ends_set), "ends")
        for name in ("moment", "view"):
            self.forms[PICTURE.key].boxes[name].input.observe(guarded(status, self._redraft), "value")
        ways = widgets.HBox([self.upload, self.again])
        acts = widgets.HBox([self.view, *self.moments.values(), self.everybody, self.measure])
        for row in (ways, acts):
            row.add_class("pt-row")
        self.ends_part.children = (
            widgets.HTML(
                '<p class="pt-hint">Click the two ends of a length that you know, such as two marks of a ruler that lies beside '
                "the pen at its height; then type the length in millimetres under “more” and save.</p>"
            ),
            self.ends,
        )
        self.above.children = (ways, self.picker, self.about, acts, self.ends_part, self.views)
        self.refresh_forms()

    # what there is ---------------------------------------------------------------------------------------

    def refresh_forms(self) -> None:
        """Show what lies in the folder and what is listed of it."""
        folder = self.job.folder / "photos"
        files = [file for file in pictures_in(self.job.folder) if not file.startswith(".")]
        listed = {logged.values.photo: logged.values for logged in self.job.log(PICTURE)}
        files.sort(key=lambda file: (file in listed, file))
        views = [_thumbnail(self.job, folder / file, listed.get(file)) for file in files[:MOST_THUMBNAILS]]
        self.picker.pictures = sorted(
            views, key=lambda view: bool(view["problem"])
        )  # what cannot be chosen stands last
        more = f" The first {MOST_THUMBNAILS} of {len(files)} are shown." if len(files) > MOST_THUMBNAILS else ""
        count = sum(file not in listed for file in files)
        if not files:
            said = "photos/ is empty."
        elif count:
            said = f"{count} of {len(files)} in photos/ not listed yet.{more} Choose one, then say when it was taken."
        else:
            said = f"Every picture in photos/ is listed.{more}"
        self.about.value = f'<p class="pt-hint">{said}</p>'
        used = [row.view for row in views_of(self.job) if row.view]
        self.view.options = tuple(dict.fromkeys([*lacking(self.job, "after"), *used, *USUAL_VIEWS]))
        self.everybody.layout.display = "" if consents(self.job).get("pictures") is True else "none"
        self.views.value = _checklist(self.job)

    def result(self) -> PanelResult:
        """How many pictures there are of each moment, what is missing, and small views."""
        log = [logged.values for logged in self.job.log(PICTURE)]
        if not log:
            return PanelResult(
                "No picture is listed yet. Choose one of the job's photos folder, or one from the computer."
            )
        views = "".join(
            _view(self.job, picture, self.job.folder / "photos" / picture.photo)
            for picture in log[-8:]
            if picture.photo is not None
        )
        lacks = lacking(self.job, "after") if any(picture.moment == "after" for picture in log) else ()
        missing = f" Not yet after the work: {', '.join(lacks)}." if lacks else ""
        return PanelResult(say(self.job, self.stage.key) + missing, table=views)

    def more(self) -> PanelResult:
        """The contact sheet of all that is listed, and each pair as it will stand on the pages."""
        return PanelResult(table="".join((*_pairs(self.job), *_contact_sheet(self.job))))

    # acting ----------------------------------------------------------------------------------------------

    def take_in(self) -> None:
        """Copy what was chosen from the computer into photos/, each under a name of its own."""
        taken: list[str] = []
        try:
            for chosen in self.upload.value:
                name = PurePath(str(chosen["name"])).name
                taken.append(lay_in(self.job.folder / "photos", name, bytes(chosen["content"])))
        finally:
            self.refresh_forms()
        if taken:
            self.picker.choose(taken[0])

    def take_up(self) -> None:
        """Put the chosen picture into the form: its entry where it has one, else what can be told of it."""
        form, file = self.forms[PICTURE.key], self.picker.file
        self.measure.value = False
        if not file:
            return
        entries = [logged for logged in self.job.log(PICTURE) if logged.values.photo == file]
        if entries:
            form.correct(entries[-1].entry)
            self.view.value = entries[-1].values.view or ""
            self.everybody.value = entries[-1].values.public is True
            return
        form.stop_correcting()
        form.boxes["photo"].text = file
        looked = look_at((self.job.folder / "photos" / file).read_bytes(), file)
        form.boxes["taken_on"].text = looked.taken_on.isoformat() if looked.taken_on else ""
        guess = view_in_name(file, tuple(self.view.options))
        self.view.value = guess
        form.boxes["view"].text = guess
        self._redraft()
        notes = "".join(f" {note}" for note in looked.notes)
        self.about.value = f'<p class="pt-hint">{escape(file)}: say when it was taken.{escape(notes)}</p>'

    def list_it(self, moment: str) -> None:
        """List the chosen picture with this moment; what the form says already goes along."""
        form = self.forms[PICTURE.key]
        if not form.boxes["photo"].text:
            raise InputError("picture", "chosen from the thumbnails", "", "Choose one, then press when it was taken.")
        form.boxes["moment"].text = moment
        if self.view.value:
            form.boxes["view"].text = str(self.view.value)
        if self.everybody.value and self.everybody.layout.display == "":
            form.boxes["public"].text = "yes"
        form.save()
        if form.status.text.startswith("saved"):
            form.boxes["public"].text = ""
            self.picker.choose("")

    def check(self, kind: Kind[Any], values: Form) -> None:
        """Refuse a file that no page can show, and one half of a scale."""
        assert isinstance(values, Picture)
        if values.photo is not None and (why := glance(self.job.folder / "photos" / values.photo)):
            raise InputError(kind.field("photo").label, "a picture that can be read", values.photo, why)
        if (values.known_mm is None) != (values.known_px is None):
            lacks = kind.field("known_px" if values.known_px is None else "known_mm")
            raise InputError(lacks.label, "filled in beside the other half of the scale", "", "Give both, or neither.")

    def _view_said(self) -> None:
        if self.forms[PICTURE.key].boxes["photo"].text:
            self.forms[PICTURE.key].boxes["view"].text = str(self.view.value)

    def _redraft(self) -> None:
        """Draft what it shows, as long as nobody wrote anything else there."""
        boxes = self.forms[PICTURE.key].boxes
        if not boxes["photo"].text or boxes["shows"].text not in ("", self._draft):
            return
        moment, view = boxes["moment"].text or None, boxes["view"].text.strip() or None
        self._draft = shown_by(self.job, Picture(moment=moment, view=view))
        boxes["shows"].text = self._draft

    def _show_ends(self) -> None:
        file = self.forms[PICTURE.key].boxes["photo"].text
        if self.measure.value and not file:
            self.measure.value = False
            raise InputError("picture", "chosen from the thumbnails", "", "Choose one first.")
        self.ends_part.layout.display = "" if self.measure.value else "none"
        if self.measure.value:
            content = (self.job.folder / "photos" / file).read_bytes()
            looked = look_at(content, file)
            self.ends.ends = []
            self.ends.size = [looked.width_px, looked.height_px]
            self.ends.uri = encoded(read_picture(content, file, LARGE_PX)).uri

    def _ends_set(self) -> None:
        apart = self.ends.apart_px
        if apart is not None:
            form = self.forms[PICTURE.key]
            form.boxes["known_px"].text = f"{apart:.0f}"
            form.more.value = True


def view_in_name(file: str, views: tuple[str, ...]) -> str:
    """The view that a file's name begins with or names, of those there are; empty where it names none.

    Examples
    --------
    >>> view_in_name("Side-before.jpg", ("nib from above", "side"))
    'side'
    """
    words = " ".join(re.findall(r"[^\W\d_]+", PurePath(file).stem.casefold()))
    found = [view for view in views if re.search(rf"\b{re.escape(view.casefold())}\b", words)]
    return max(found, key=len, default="")


def _thumbnail(job: Job, path: Path, listed: Picture | None) -> dict[str, str]:
    state = _NOT_LISTED
    if listed is not None:
        state = ", ".join(part for part in (dict(MOMENTS).get(listed.moment or "", ""), listed.view or "") if part)
    problem = glance(path)
    alt = shown_by(job, listed) if listed is not None else f"the picture {path.name}"
    return {"file": path.name, "uri": "" if problem else _small(path), "alt": alt, "state": state, "problem": problem}


def _small(path: Path, long_side_px: int = THUMBNAIL_PX) -> str:
    facts = path.stat()
    return _encoded_small(path, facts.st_mtime_ns, facts.st_size, long_side_px)


@functools.lru_cache(maxsize=256)
def _encoded_small(path: Path, changed_ns: int, size: int, long_side_px: int) -> str:  # noqa: ARG001 - a changed file is read anew
    return encoded(read_picture(path.read_bytes(), path.name, long_side_px), quality=75).uri


def _view(job: Job, picture: Picture, path: Path) -> str:
    if not has_picture(job.folder, path.name):
        return f'<p class="pt-error">✗ photos/{escape(path.name)} is not there.</p>'
    if why := glance(path):
        return f'<p class="pt-error">✗ photos/{escape(path.name)} is not a picture that can be read. {escape(why)}</p>'
    return f'<img src="{_small(path)}" alt="{escape(shown_by(job, picture), quote=True)}" style="margin:0 8px 8px 0">'


def _checklist(job: Job) -> str:
    """Every view that was named, and whether it has its picture before and after."""
    rows = [row for row in views_of(job) if row.view]
    if not rows:
        return ""
    cells = "".join(
        f'<tr><th scope="row">{escape(row.view)}</th>'
        + "".join(f"<td>{_taken(files, asked)}</td>" for files, asked in ((row.before, True), (row.during, False), (row.after, True)))
        + "</tr>"
        for row in rows
    )  # fmt: skip
    return (
        '<table class="data"><caption>Views</caption><thead><tr><th scope="col">view</th><th scope="col">before</th>'
        f'<th scope="col">during</th><th scope="col">after</th></tr></thead><tbody>{cells}</tbody></table>'
    )


def _taken(files: tuple[str, ...], asked: bool) -> str:
    if files:
        return "✓" if len(files) == 1 else f"✓ {len(files)}"
    return "<strong>missing</strong>" if asked else "–"


def _pairs(job: Job) -> Iterator[str]:
    """Each view before and after: half of each where they can be aligned, else why not."""
    folder = job.folder / "photos"
    for row in (row for row in views_of(job) if row.view and row.before and row.after):
        before, after = folder / row.before[0], folder / row.after[-1]
        if glance(before) or glance(after):
            continue
        uri, why = _halves(before, after, before.stat().st_mtime_ns, after.stat().st_mtime_ns)
        words = f"{row.view}: the pages show both in one frame, aligned"
        if why:
            yield f'<p class="pt-hint">{escape(row.view)}: the pages show them side by side as they are, for {escape(why)}.</p>'
        else:
            yield f'<figure style="margin:0 0 10px"><img src="{uri}" alt="left half before, right half after" style="max-width:100%"><figcaption class="pt-hint">{escape(words)}; here half of each.</figcaption></figure>'


@functools.lru_cache(maxsize=32)
def _halves(before: Path, after: Path, before_ns: int, after_ns: int) -> tuple[str, str]:  # noqa: ARG001 - a changed file is read anew
    pair = pair_of(*(read_picture(path.read_bytes(), path.name, PAIR_PX) for path in (before, after)))
    if isinstance(pair.alignment, Unlike):
        return "", pair.alignment.reason
    return encoded(half_and_half(pair.before, pair.after), quality=78).uri, ""


def _contact_sheet(job: Job) -> Iterator[str]:
    """Every picture that is listed, with its words."""
    yield '<div style="display:flex;flex-wrap:wrap;gap:10px;margin-top:10px">'
    for picture in (logged.values for logged in job.log(PICTURE)):
        if picture.photo is not None:
            moment = dict(MOMENTS).get(picture.moment or "", "")
            words = (
                f"{moment}{', ' + picture.view if picture.view else ''}: {picture.caption or shown_by(job, picture)}"
            )
            inside = _view(job, picture, job.folder / "photos" / picture.photo)
            yield f'<figure style="margin:0;width:190px;font-size:.85em">{inside.replace("margin:0 8px 8px 0", "width:190px")}<figcaption>{escape(words)}</figcaption></figure>'
    yield "</div>"
    yield f'<p class="pt-hint">As a page to print: pentools writeup {escape(job.name)} --only pictures</p>'
