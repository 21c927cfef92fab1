"""The command ``desk`` where the desk's own packages are not installed, and the tests there."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
WITHOUT = """
import sys
from importlib.abc import MetaPathFinder

class Without(MetaPathFinder):
    def find_spec(self, name, path=None, target=None):
        if name.partition(".")[0] in ("django", "django_htmx", "pytest_django", "playwright"):
            raise ModuleNotFoundError(name)

import importlib.util
real = importlib.util.find_spec
def find_spec(name, package=None):
    try:
        return real(name, package)
    except ModuleNotFoundError:
        return None
importlib.util.find_spec = find_spec
sys.meta_path.insert(0, Without())
"""


def without_django(code: str) -> subprocess.CompletedProcess[str]:
    """Run code in a Python that has no Django."""
    return subprocess.run(
        [sys.executable, "-c", WITHOUT + code],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
    )


def test_it_says_what_to_install() -> None:
    code = "from chairwright.cli.main import main\nsys.exit(main(['desk', '--no-open']))"
    result = without_django(code)
    assert result.returncode == 2
    assert "no django" in result.stderr
    assert "pip install 'chairwright[desk]'" in result.stderr
    assert "Traceback" not in result.stderr


def test_the_list_of_commands_needs_no_django() -> None:
    code = "from chairwright.cli.main import main\nmain(['--help'])"
    result = without_django(code)
    assert "open the whole job in a browser" in result.stdout
    assert result.returncode == 0


def test_the_core_is_tested_where_django_is_not_installed() -> None:
    code = (
        "import pytest\n"
        "where = ['tests/desk', 'tests/cli/test_desk.py']\n"
        "options = ['-q', '--collect-only', '-p', 'no:django', '-p', 'no:xdist']\n"
        "sys.exit(pytest.main([*options, *where]))"
    )
    result = without_django(code)
    assert result.returncode == 0, result.stdout + result.stderr
    assert "tests/cli/test_desk.py" in result.stdout
    assert "tests/desk" not in result.stdout
