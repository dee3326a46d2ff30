#!/usr/bin/env python3
"""The tool starts at once, and the main job on the example stays within its memory (release builds);
the job's time is told, not tested: speed is measured by the benchmarks, against a floor.

usage: cost_test.py TOOL"""

import os
import resource
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, check, done  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
MOST_MIB, RUNS = 64, 5
MOST_START_MS, STARTS = 10, 20


def cpu_seconds(*words):
    """CPU time of one run, and its exit status."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    status = subprocess.run([TOOL, *words], stdout=subprocess.DEVNULL,
                            stderr=subprocess.DEVNULL).returncode
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, status


# The least of some runs: what else the machine does can only add.
start_ms = 1000 * min(cpu_seconds("--version")[0] for _ in range(STARTS))
check(f"--version takes {start_ms:.1f} ms of CPU, under {MOST_START_MS}", start_ms < MOST_START_MS)
with tempfile.TemporaryDirectory() as folder:
    runs = [cpu_seconds("make", EXAMPLE, "-o", folder) for _ in range(RUNS)]
    mib = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1024
check("the example makes", all(status == 0 for _, status in runs), runs)
print(f"# CPU time, the least of {RUNS} runs: {min(runs)[0]:.3f} s")
check(f"its memory at the peak, {mib:.0f} MiB, is under {MOST_MIB} MiB", mib < MOST_MIB)
done()
