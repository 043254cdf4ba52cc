"""Prints what `import seamwright` takes beside the bare interpreter, in milliseconds: run by hand with the Python of target/venv, into which a
wheel built for release is installed.

Both are started in turn, and their processor time is told beside the time by the clock, which a machine under load stretches. The smallest of many
runs is the cost, the median what a user meets.
"""

import resource
import statistics
import subprocess
import sys
import time

RUNS = 100


def start(code: str) -> tuple[float, float]:
    """The time by the clock and the processor time of an interpreter that runs this."""
    used, begin = resource.getrusage(resource.RUSAGE_CHILDREN), time.perf_counter()
    subprocess.run([sys.executable, "-I", "-c", code], check=True)
    now = resource.getrusage(resource.RUSAGE_CHILDREN)
    return (time.perf_counter() - begin) * 1e3, (now.ru_utime + now.ru_stime - used.ru_utime - used.ru_stime) * 1e3


def told(name: str, bare: list[float], more: list[float]) -> None:
    print(f"{name}: bare {statistics.median(bare):.1f}, import {statistics.median(m - b for b, m in zip(bare, more)):+.1f}, least {min(more) - min(bare):+.1f}")


code = sys.argv[1] if len(sys.argv) > 1 else "import seamwright"
pairs = [(start("pass"), start(code)) for _ in range(RUNS)]
for at, name in enumerate(("clock", "processor")):
    told(f"{name} ms", [bare[at] for bare, _ in pairs], [more[at] for _, more in pairs])
