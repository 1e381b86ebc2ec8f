"""Progress: heard only where somebody listens, written only where it takes long."""

import io
import json

from pentools.cli import main
from pentools.sums import progress
from pentools.sums.nib.drawn_page import drawn_page
from pentools.sums.progress import ProgressLine, tell, telling


class Terminal(io.StringIO):
    def isatty(self):
        return True


def line(stream, moments):
    moments = iter([0.0, *moments])
    return ProgressLine(stream, lambda: next(moments))


def test_nobody_listens_and_one_does():
    heard = []
    tell("reading", 0.0)
    with telling(lambda what, share: heard.append((what, share))):
        tell("measuring", 0.5)
    tell("done", 1.0)
    assert heard == [("measuring", 0.5)]


def test_a_short_sum_says_nothing():
    for stream in (Terminal(), io.StringIO()):
        said = line(stream, [0.1, 0.9])
        said("reading", 0.0)
        said("tracing", 0.2)
        said.end()
        assert stream.getvalue() == ""


def test_a_terminal_s_line_is_overwritten_and_cleared():
    stream = Terminal()
    said = line(stream, [1.1, 1.2, 1.5])
    said("measuring", 0.4)
    said("measuring", 0.45)
    said("done", 1.0)
    said.end()
    assert stream.getvalue() == "\rmeasuring, 40 %\rdone, 100 %    \r           \r"


def test_elsewhere_a_line_now_and_then():
    stream = io.StringIO()
    said = line(stream, [1.1, 3.0, 6.2])
    for share in (0.4, 0.5, 0.6):
        said("measuring", share)
    said.end()
    assert stream.getvalue() == "measuring, 40 %\nmeasuring, 60 %\n"


def test_a_page_of_lines_tells_and_the_answer_stays_alone(tmp_path, monkeypatch, capsys):
    from PIL import Image

    monkeypatch.setattr(progress, "_PATIENCE_S", 0.0)
    Image.fromarray(drawn_page()).save(tmp_path / "a.png", dpi=(600, 600))
    assert main(["sums", "lines", str(tmp_path / "a.png"), "--json"]) == 0
    out = capsys.readouterr()
    assert out.err.startswith("reading, 0 %")
    assert json.loads(out.out)["strokes"]
