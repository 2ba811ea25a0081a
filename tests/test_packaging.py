"""The knowledge folder is found from a wheel, from an sdist and from an editable install."""

from __future__ import annotations

import os
import subprocess
import sys
import tarfile
from pathlib import Path

import pytest

from triage.guide.find import knowledge_root

HOME = Path(__file__).parents[1]


def build(kind: str, source: Path, into: Path) -> Path:
    """Build a wheel or an sdist with the tools already installed, and return it."""
    subprocess.run(
        [sys.executable, "-m", "build", "--no-isolation", f"--{kind}", "--outdir", str(into), str(source)],
        check=True,
        capture_output=True,
    )
    return next(into.glob("*.whl" if kind == "wheel" else "*.tar.gz"))


def check_from(wheel: Path, site: Path) -> str:
    """Install a wheel into an empty folder and run its check from the root of the file system."""
    subprocess.run(
        [sys.executable, "-m", "pip", "install", "--quiet", "--no-deps", "--target", str(site), str(wheel)],
        check=True,
        capture_output=True,
    )
    ran = subprocess.run(
        [
            sys.executable,
            "-P",
            "-c",
            "import triage, triage.cli; print(triage.__file__); triage.cli.main(['check'])",
        ],
        cwd="/",
        env={**os.environ, "PYTHONPATH": str(site)},
        check=True,
        capture_output=True,
        text=True,
    )
    return ran.stdout


@pytest.mark.slow
def test_a_wheel_holds_the_knowledge(tmp_path: Path) -> None:
    """An installed wheel checks its own knowledge, from any folder."""
    said = check_from(build("wheel", HOME, tmp_path), tmp_path / "site")

    assert said.startswith(str(tmp_path / "site" / "triage" / "__init__.py"))
    assert "Sound: " in said
    assert (tmp_path / "site" / "triage" / "knowledge" / "README.md").is_file()


@pytest.mark.slow
def test_a_wheel_built_from_the_sdist_holds_it_too(tmp_path: Path) -> None:
    """The sdist is whole: a wheel made from it alone checks as well."""
    sdist = build("sdist", HOME, tmp_path / "sdist")
    with tarfile.open(sdist) as packed:
        packed.extractall(tmp_path / "unpacked", filter="data")
    source = next((tmp_path / "unpacked").iterdir())

    said = check_from(build("wheel", source, tmp_path / "wheel"), tmp_path / "site")

    assert "Sound: " in said
    assert {entry.name for entry in source.iterdir()} >= {
        "triage",
        "knowledge",
        "tests",
        "DEVELOPERS.md",
        "LICENSE",
    }


def test_a_checkout_uses_its_own_knowledge() -> None:
    """From a checkout, edits to the knowledge beside the package are live."""
    assert knowledge_root() == HOME / "knowledge"
