"""What other programs say of ours: they read only what Chalkyard wrote, above all plan.json."""

import json
import os
import pathlib
import shutil
import subprocess

import pytest
from playwright.sync_api import sync_playwright

ROOT = pathlib.Path(__file__).resolve().parent.parent
PROGRAM = ROOT / "target" / "release" / "chalkyard"


# nothing that asks the network: a page is held to asking for nothing
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def run(*words, cwd=None, check=True):
    """Runs the program; the caller reads its status and words."""
    done = subprocess.run(
        [PROGRAM, *map(str, words)], cwd=cwd, capture_output=True, text=True, timeout=300
    )
    if check:
        assert done.returncode == 0, done.stderr
    return done


@pytest.fixture(scope="session")
def demo(tmp_path_factory):
    """The demo project, taken through the whole job in a folder of its own."""
    folder = tmp_path_factory.mktemp("demo") / "demo"
    shutil.copytree(ROOT / "demo", folder, ignore=shutil.ignore_patterns("out"))
    run("plan", folder)
    return folder


@pytest.fixture(scope="session")
def plan(demo):
    return json.loads((demo / "out" / "plan.json").read_text())


@pytest.fixture(scope="session")
def browser():
    """Headless Chromium, where there is one."""
    for name in ("chromium", "chromium-browser", "google-chrome"):
        if path := shutil.which(name):
            return path
    if os.environ.get("CI"):
        pytest.fail("no Chromium: the test command installs one")
    pytest.skip("no Chromium on this machine")


@pytest.fixture(scope="module")
def chromium(browser):
    with sync_playwright() as driver:
        chromium = driver.chromium.launch(executable_path=browser, args=FLAGS)
        yield chromium
        chromium.close()
