"""Prints what `import seamwright` takes beside the bare interpreter, in milliseconds: run by hand with the Python of target/venv.

Both are started in turn, so that a machine under load slows both; the median of the differences is told.
"""

import statistics
import subprocess
import sys
import time


def start(code: str) -> float:
    begin = time.perf_counter()
    subprocess.run([sys.executable, "-I", "-c", code], check=True)
    return (time.perf_counter() - begin) * 1e3


pairs = [(start("pass"), start("import seamwright")) for _ in range(60)]
bare = statistics.median(b for b, _ in pairs)
more = statistics.median(s - b for b, s in pairs)
print(f"bare interpreter {bare:.1f} ms, import seamwright {more:+.1f} ms")
