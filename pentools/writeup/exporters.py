"""The two pages in JupyterLab's export menu and in ``jupyter nbconvert --to``: the same renderer behind both."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from nbconvert.exporters.exporter import Exporter, FilenameExtension

from pentools.errors import PentoolsError

if TYPE_CHECKING:
    from pentools.writeup.blocks import Audience

__all__ = ["BlogPageExporter", "ClientPageExporter"]


class _PageExporter(Exporter):  # type: ignore[misc]
    """What both exporters share: find the job from the notebook's folder, then render."""

    export_from_notebook: str
    file_extension = FilenameExtension(".html", help="The pages are HTML.").tag(config=True)
    output_mimetype = "text/html"
    audience: Audience

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
        ready["output_extension"] = ".html"
        return self._page(nb, ready), ready

    def _page(self, nb: Any, resources: Any) -> str:
        from pentools.record.job import RECORD_NAME, job_in
        from pentools.writeup.page import render_page
        from pentools.writeup.template import plain_page

        # the command line gives no folder for a notebook in the present one
        folder = Path(str(resources.get("metadata", {}).get("path") or "."))
        if not (folder / RECORD_NAME).is_file():
            return plain_page(
                "No page could be made",
                f"Beside this notebook there is no {RECORD_NAME}, so it belongs to no job, or nothing has been entered yet. "
                "Open the notebook of a job on the bench, save a first entry, and export it from there.",
            )
        try:
            return render_page(job_in(folder), self.audience, nb)
        except PentoolsError as error:
            return plain_page("No page was made", str(error))


class ClientPageExporter(_PageExporter):
    """The page for the client: everything in the record."""

    export_from_notebook = "Pen page for the client"
    audience = "client"


class BlogPageExporter(_PageExporter):
    """The page for publication: the story, and only what may be shown to everybody."""

    export_from_notebook = "Pen page for publication"
    audience = "blog"
