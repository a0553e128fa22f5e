"""The package itself: its stubs, its examples, and that the interpreter goes on while it works."""

from __future__ import annotations

import doctest
import importlib
import json
import subprocess
import sys
import threading
import time

import tilepost


def test_stubs_fit_the_module() -> None:
    done = subprocess.run([sys.executable, "-m", "mypy.stubtest", "tilepost"], capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_examples_run() -> None:
    modules = [importlib.import_module(f"tilepost.{name}") for name in ("errors", "job")]
    results = [doctest.testmod(module) for module in [tilepost, *modules]]
    assert all(result.attempted > 0 and result.failed == 0 for result in results)


def test_the_interpreter_goes_on_during_a_takeoff(gable: tilepost.Job) -> None:
    document = json.loads(gable.text)
    document["slopes"][0]["posts"] = []
    document["slopes"][0]["post_grids"] = [
        {"name": "G", "assembly": "post-7", "u": "2 ft", "v": "2 ft", "columns": 100, "rows": 40,
         "column_spacing": "4 in", "row_spacing": "4 in"}
    ]
    job = tilepost.Job.from_dict(document, gable.files)
    ticks = []
    done = threading.Event()

    def tick() -> None:
        while not done.wait(0.001):
            ticks.append(time.perf_counter())

    thread = threading.Thread(target=tick)
    thread.start()
    begun = time.perf_counter()
    job.takeoff()
    ended = time.perf_counter()
    done.set()
    thread.join()
    during = [begun, *(at for at in ticks if begun < at < ended), ended]
    longest = max(after - before for before, after in zip(during, during[1:], strict=False))
    assert longest < (ended - begun) / 2, f"the interpreter stood still for {longest:.3f} of {ended - begun:.3f} s"
