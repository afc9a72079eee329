"""Reads a take with NumPy and SciPy: the same work as src/reading/read-take, for comparison.

python3 read_take.py FOLDER RUNS CORES   reads FOLDER/take.json and FOLDER/capture.f32 RUNS times
and prints seconds per step and what was read, as JSON. With one core everything in this process,
in seconds of that core; with more, in seconds by the clock, transforms of the whole capture on all of them and the channels by a pool of processes,
which stands before time is taken and holds the capture already. Written from the published methods
with SciPy's own tools where it has them, vectorised, its caches as the project's.
"""
import json
import multiprocessing
import os
import sys
import time

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

folder, runs, cores = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
os.environ["LEARNT"] = os.path.join(folder, "learnt.json")

import numpy as np
from scipy import fft

from arrival import arrival_from_marks
from channel import Take, read_channel
from clock import check_capture, estimate_clock, gain_faults
from responses import PRE

with open(os.path.join(folder, "take.json")) as file:
    TAKE = json.load(file)
for one in TAKE["segments"]:
    one["sweep"]["rate"] = TAKE["sampleRate"]
CAPTURE = np.fromfile(os.path.join(folder, "capture.f32"), dtype=np.float32).astype(float)
held = {}


def channel_in_pool(order):
    run, ratio, at, index = order
    if held.get("run") != run:
        held.update(run=run, whole=Take(CAPTURE, TAKE, ratio, at))
    return read_channel(held["whole"], index)


def marks_after_sweep(by_marks, read_all, ratio):
    """How much later the reference speaker arrives by its marks than by its sweep, seconds."""
    own = next(one for _, one in read_all if one["channel"] == TAKE["reference"])
    rate = TAKE["sampleRate"] * ratio
    by_sweep = own["arrivalSamples"] - int(round(PRE * rate))
    return float(by_marks["at"] - round(0.1 * rate) - by_sweep) / rate


def read(run, pool):
    now = time.perf_counter if pool else time.process_time
    started = now()
    with fft.set_workers(cores):
        ratio, at, timed, gains = estimate_clock(CAPTURE, TAKE)
    checked = {**check_capture(CAPTURE, TAKE, ratio, at), "gains": gain_faults(TAKE, gains)}
    by_marks = arrival_from_marks(CAPTURE, TAKE, ratio, at)
    clocked = now()
    indices = range(len(TAKE["segments"]))
    if pool:
        read_all = pool.map(channel_in_pool, [(run, ratio, at, k) for k in indices], chunksize=1)
    else:
        whole = Take(CAPTURE, TAKE, ratio, at)
        read_all = [read_channel(whole, k) for k in indices]
    seconds = {"clock and checks": clocked - started}
    for took, _ in read_all:
        for name, value in took.items():
            seconds[name] = seconds.get(name, 0) + value
    seconds["total"] = now() - started
    reading = {"skewPpm": (ratio - 1) * 1e6, "skewHalfPpm": timed["half"] * 1e6,
               "marksAfterSweepSeconds": marks_after_sweep(by_marks, read_all, ratio),
               "faults": int(np.sum(checked["gains"])), "channels": [one for _, one in read_all]}
    return seconds, reading


if __name__ == "__main__":
    the_pool = multiprocessing.get_context("fork").Pool(cores) if cores > 1 else None
    results = [read(run, the_pool) for run in range(runs)]
    json.dump({"runs": [seconds for seconds, _ in results], "reading": results[-1][1]}, sys.stdout)
