"""Decay times of octave bands by SciPy, for dsp/decay.

python3 decay-times.py > decay-times.vectors.json

The sound is made of whole numbers (a linear congruential generator), so that the test beside makes
the very same: 0.15 s of silence, then noise that falls by two slopes, so that EDT, T20 and T30
differ. Its decay is read without noise and from end to end: an octave of scipy.signal.butter run
backwards in time, backward integration, scipy.stats.linregress through the levels of ISO 3382-1:2009,
5.3 (from memory). EDT starts at -0.1 dB, as the project's does. Nothing here was written from the
project's code.
"""
import json
import sys

import numpy as np
import scipy
from scipy import fft, signal, stats

RATE = 48_000
LEAD = 7_200
LENGTH = LEAD + 65_000
# Power and seconds in which 60 dB are lost.
FALLS = [(1.0, 0.25), (0.06, 0.8)]
BANDS = [10 ** (0.3 * n) for n in range(7, 14)]
RANGES = {"edt": (-0.1, -10), "t20": (-5, -25), "t30": (-5, -35)}


def uniform(seed, count):
    """Numbers from -1 to 1: x <- 1664525 x + 1013904223 modulo 2^32."""
    out, state = np.empty(count), seed
    for n in range(count):
        state = (1664525 * state + 1013904223) % 2 ** 32
        out[n] = state / 2 ** 31 - 1
    return out


def sound(seed):
    t = np.arange(LENGTH - LEAD) / RATE
    power = sum(p * 10 ** (-6 * t / s) for p, s in FALLS)
    return np.concatenate([np.zeros(LEAD), np.sqrt(power) * uniform(seed, len(t))])


def octave_power(x, mid):
    """Power of the octave along time, filtered backwards: the filter's response conjugated."""
    size = fft.next_fast_len(4 * len(x))
    hz = fft.rfftfreq(size, 1 / RATE)
    edges = 2 * np.pi * mid * np.array([10 ** -0.15, 10 ** 0.15])
    zpk = signal.butter(3, edges, "bandpass", analog=True, output="zpk")
    response = signal.freqs_zpk(*zpk, worN=2 * np.pi * hz)[1]
    band = fft.irfft(fft.rfft(x, size) * np.conj(response), size)
    # What comes before the sound wraps round to the end.
    return np.abs(signal.hilbert(np.roll(band, size // 2))[size // 2 - LEAD:][:len(x) + LEAD]) ** 2


def decay_times(x, mid):
    remaining = np.cumsum(octave_power(x, mid)[::-1])[::-1]
    levels = 10 * np.log10(remaining / remaining[0])[2 * LEAD:]
    times = {}
    for name, (top, bottom) in RANGES.items():
        first, last = np.argmax(levels <= top), np.argmax(levels < bottom)
        line = stats.linregress(np.arange(first, last) / RATE, levels[first:last])
        times[name] = round(-60 / line.slope, 6)
    return times


if __name__ == "__main__":
    x = sound(1)
    bands = [{"midHz": mid, **decay_times(x, mid)} for mid in BANDS]
    json.dump({"madeWith": f"SciPy {scipy.__version__}", "sampleRate": RATE, "lead": LEAD,
               "length": LENGTH, "falls": FALLS, "seed": 1, "bands": bands}, sys.stdout, indent=1)
    print()
