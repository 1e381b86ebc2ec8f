"""Stored outputs of cells tagged for publishing: made harmless, and nothing of the machine."""

from writeup.pages import png

from pentools.writeup.outputs import published_html


def test_published_outputs():
    def output(**data):
        return {"output_type": "display_data", "data": data, "metadata": {"image/png": {"alt": "a red square"}}}

    assert 'alt="a red square"' in published_html(output(**{"image/png": png(), "text/plain": "x"}))
    assert "data:image/svg+xml;base64," in published_html(output(**{"image/svg+xml": "<svg onload='x()'/>"}))
    table = published_html(
        output(**{"text/html": "<table border=1><tr><td>1<script>x()</script></td></tr></table>", "text/plain": "x"})
    )
    assert "<td>1</td>" in table
    assert "script" not in table
    assert "&lt;b&gt;" in published_html(output(**{"text/plain": "<b>"}))
    assert published_html(output(**{"application/vnd.jupyter.widget-view+json": {}, "text/plain": "Box()"})) == ""
    assert published_html({"output_type": "error", "ename": "E", "traceback": ["/home/x"]}) == ""
    assert published_html({"output_type": "stream", "name": "stderr", "text": "/home/x"}) == ""
    assert published_html(output(**{"image/png": "no picture"})) == ""
