"""The pages in JupyterLab's export menu and in ``jupyter nbconvert --to``: the same makers behind both."""

from __future__ import annotations

from pathlib import Path
from typing import Any

from nbconvert.exporters.exporter import Exporter, FilenameExtension

from pentools.errors import HoldError, PentoolsError

__all__ = ["LetterExporter", "RecordExporter", "StoryExporter"]


class _PageExporter(Exporter):  # type: ignore[misc]
    """What the exporters share: find the job from the notebook's folder, then make the form.

    JupyterLab and ``jupyter nbconvert`` both name the file after the notebook and put the output extension behind it;
    so the form's name stands in that extension, and no two forms ever have one name.
    """

    export_from_notebook: str
    form: str
    file_extension = FilenameExtension(".html", help="The pages are HTML.").tag(config=True)
    output_mimetype = "text/html"

    def from_notebook_node(self, nb: Any, resources: Any = None, **_: Any) -> tuple[str, Any]:
        """Make the page of the job whose notebook this is.

        Parameters
        ----------
        nb : NotebookNode
            The notebook as it stands in the editor.
        resources : mapping or None
            ``metadata.path`` in it is the folder the notebook lies in.
        **_
            Not used.

        Returns
        -------
        tuple of (str, mapping)
            One HTML page, and the resources. Where the page may not or cannot be made, it says in words why.
        """
        ready = self._init_resources(resources)
        ready["output_extension"] = f"-{self.form}.html"
        return self._page(nb, ready), ready

    def _page(self, nb: Any, resources: Any) -> str:
        from pentools.record.job import RECORD_NAME, job_in
        from pentools.writeup.forms import PAGE_FORMS, files_of
        from pentools.writeup.strangers import StrangersError
        from pentools.writeup.template import plain_page

        # the command line gives no folder for a notebook in the present one
        folder = Path(str(resources.get("metadata", {}).get("path") or "."))
        if not (folder / RECORD_NAME).is_file():
            return plain_page(
                "No page could be made",
                f"Beside this notebook there is no {RECORD_NAME}, so it belongs to no job, or nothing has been entered yet. "
                "Open the notebook of a job on the bench, save a first entry, and export it from there.",
            )
        form = PAGE_FORMS[self.form]
        try:
            return str(files_of(form, job_in(folder), nb)[form.file])
        except StrangersError as error:
            # this page may be taken for the other and sent on: it names the places and not the words
            return plain_page("No page was made", f"{error.places_alone} pentools writeup names the words.")
        except PentoolsError as error:
            told = "The job or its bench cannot be read. pentools check says why."
            return plain_page(
                "No page was made", str(error) if form.audience == "owner" or isinstance(error, HoldError) else told
            )


class LetterExporter(_PageExporter):
    """The letter to the owner."""

    export_from_notebook = "Pen letter for the owner"
    form = "letter"


class RecordExporter(_PageExporter):
    """The full record for the owner."""

    export_from_notebook = "Pen record for the owner"
    form = "record"


class StoryExporter(_PageExporter):
    """The story for everybody: only what may be shown."""

    export_from_notebook = "Pen story for everybody"
    form = "story"
