#!/usr/bin/env python3
"""The main job on the example stays within its memory (release builds). The time that the tool takes
to start, and the job's, are told, not tested: speed is measured by the benchmarks, against a floor. Of
many jobs, each takes as much memory and time as if there were few.

usage: cost_test.py TOOL [JOBS]
JOBS: how many are many; 1000 takes some minutes"""

import os
import random
import subprocess
import sys
import tempfile

sys.path.insert(0, os.path.join(os.path.dirname(os.path.abspath(__file__)), "..", "support"))
from suite import EXAMPLE, check, done, drawn_jobs  # noqa: E402

TOOL = os.path.abspath(sys.argv[1])
JOBS = int(sys.argv[2]) if len(sys.argv) > 2 else 60
MOST_MIB, RUNS, FEW = 64, 5, 10
STARTS = 20


def cost(*words):
    """Exit status, CPU seconds and MiB at the peak of one run."""
    process = subprocess.Popen([TOOL, *words], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    return process.returncode, used.ru_utime + used.ru_stime, used.ru_maxrss / 1024


def make(*jobs):
    with tempfile.TemporaryDirectory() as folder:
        return cost("make", *jobs, "-o", folder)


# The least of some runs: what else the machine does can only add.
starts = [cost("--version") for _ in range(STARTS)]
check("the tool starts", all(start[0] == 0 for start in starts), starts)
print(f"# CPU time to start, the least of {STARTS}: {1000 * min(start[1] for start in starts):.1f} ms")
runs = [make(EXAMPLE) for _ in range(RUNS)]
mib = max(run[2] for run in runs)
check("the example makes", all(run[0] == 0 for run in runs), runs)
print(f"# CPU time, the least of {RUNS} runs: {min(run[1] for run in runs):.3f} s")
check(f"its memory at the peak, {mib:.0f} MiB, is under {MOST_MIB} MiB", mib < MOST_MIB)

seed = int(os.environ.get("SWATHE_SEED", random.randrange(1 << 30)))
with tempfile.TemporaryDirectory() as folder:
    jobs = drawn_jobs(random.Random(seed), JOBS, folder)
    few = [make(*jobs[:FEW]) for _ in range(2)]
    status, seconds, mib = make(*jobs)
status_few = few[0][0]
per_job_few, mib_few = min(run[1] for run in few) / FEW, max(run[2] for run in few)
print(f"# drawn jobs (SWATHE_SEED={seed}): {FEW}: {mib_few:.1f} MiB, {1e3 * per_job_few:.0f} ms of CPU a "
      f"job; {JOBS}: {mib:.1f} MiB, {1e3 * seconds / JOBS:.0f} ms")
# 2 says that some drawn jobs are wrong, such as a number that fits on no side.
check("the drawn jobs make, or are refused", status in (0, 2) and status_few in (0, 2))
check(f"{JOBS} jobs take no more memory than {FEW}", mib < 1.1 * mib_few + 2, (mib_few, mib))
check("nor half as much time again a job", seconds / JOBS < 1.5 * per_job_few,
      (per_job_few, seconds / JOBS))
done()
