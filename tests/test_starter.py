"""The file to double-click: on each system it runs this very Python on this very bench, whatever signs are in their names."""

import shlex
import shutil
import subprocess
import sys

import pytest

from pentools.cli import main
from pentools.record.bench import open_bench_folder
from pentools.starter import lay_starter, starter_file

ODD = '/home/quill & nib/100% $HOME "pens" `x`/it\'s'


def test_a_shell_script_for_a_mac_and_its_words_survive():
    name, text = starter_file("/opt/py thon", ODD, "darwin")
    assert name.endswith(".command")
    assert shlex.split(text.splitlines()[1])[:6] == ["/opt/py thon", "-m", "pentools.cli", "open", "--bench", ODD]


def test_a_command_file_for_windows_ends_its_lines_as_there_and_keeps_its_window_when_something_is_wrong():
    name, text = starter_file(r"C:\Py thon\python.exe", r"C:\pens 100%", "win32")
    assert name.endswith(".cmd")
    assert '"C:\\Py thon\\python.exe" -m pentools.cli open --bench "C:\\pens 100%%"\r\n' in text
    assert text.endswith("if errorlevel 1 pause\r\n")


def unquoted(text):
    """The words of an Exec line: the file's own escapes first, then the quotes of the specification."""
    [line] = [line for line in text.splitlines() if line.startswith("Exec=")]
    bare = line.removeprefix("Exec=").replace("\\\\", "\\").replace("%%", "%")
    return [word.replace("\\$", "$").replace("\\`", "`") for word in shlex.split(bare)]


def test_a_desktop_entry_elsewhere_and_its_words_survive(tmp_path):
    name, text = starter_file("/opt/py thon", ODD, "linux")
    assert unquoted(text) == ["/opt/py thon", "-m", "pentools.cli", "open", "--bench", ODD]
    if shutil.which("desktop-file-validate"):
        (tmp_path / name).write_text(text)
        subprocess.run(["desktop-file-validate", tmp_path / name], check=True)


def test_it_is_laid_for_this_system_and_can_be_run(tmp_path):
    bench = open_bench_folder(tmp_path / "bench", create=True)
    place = lay_starter(bench, tmp_path)
    assert str(bench.folder) in place.read_text(encoding="utf-8")
    assert sys.platform == "win32" or place.stat().st_mode & 0o100
    assert lay_starter(bench, tmp_path) == place


def test_by_default_it_lies_on_the_desktop_or_at_home(tmp_path, monkeypatch):
    monkeypatch.setattr("pentools.starter.Path.home", lambda: tmp_path)
    bench = open_bench_folder(tmp_path / "bench", create=True)
    assert lay_starter(bench).parent == tmp_path
    (tmp_path / "Desktop").mkdir()
    assert lay_starter(bench).parent == tmp_path / "Desktop"


def test_the_command_says_where_it_lies_or_why_not(tmp_path, capsys):
    bench = str(tmp_path / "bench")
    open_bench_folder(bench, create=True)
    assert main(["starter", str(tmp_path), "--bench", bench]) == 0
    assert "Double-click it to open the bench" in capsys.readouterr().out
    assert main(["starter", str(tmp_path / "nowhere"), "--bench", bench]) == 3
    assert "cannot be laid" in capsys.readouterr().err


@pytest.mark.parametrize("words", [["--version"], ["starter", "--help"]])
def test_the_module_is_the_command(words):
    told = subprocess.run([sys.executable, "-m", "pentools.cli", *words], capture_output=True, text=True, check=True)
    assert "pentools" in told.stdout
