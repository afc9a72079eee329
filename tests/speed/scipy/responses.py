"""Impulse responses: each sweep divided by the sweep as the capture's clock counts it."""
import functools
import json

import numpy as np
from scipy import fft, signal

from shared import faded, rise

PRE, POST = 0.17, 1.36
HIGHEST_ORDER, EARLY = 6, 0.05


def octave_rate(sweep):
    return sweep["lengthSamples"] / sweep["rate"] / np.log(sweep["endHz"] / sweep["startHz"])


def lead_of(sweep, order):
    """How long before the arrival of an order its window opens, seconds."""
    share = np.log(1.5 if order == 1 else order / (order - 1))
    return 0.002 + 4 / sweep["endHz"] + 0.15 * octave_rate(sweep) * share


def before_seconds(sweep):
    return (octave_rate(sweep) * np.log(HIGHEST_ORDER) + lead_of(sweep, HIGHEST_ORDER)
            + 1 / sweep["rate"] + EARLY)


@functools.lru_cache(maxsize=4)
def inverse_of(key, rate, used, ratio):
    sweep = json.loads(key)
    n, f1, f2 = sweep["lengthSamples"], sweep["startHz"], sweep["endHz"]
    count, heard = int(round(n * ratio)), rate * ratio
    t = np.arange(count) / heard
    x = signal.chirp(t, f1, n / rate, f2, method="logarithmic", phi=-90)
    x = faded(x, int(sweep["fadeInSamples"] * ratio), int(sweep["fadeOutSamples"] * ratio))
    size = fft.next_fast_len(used, real=True)
    f, spectrum = fft.rfftfreq(size, 1 / heard), fft.rfft(x, size)
    floor = 1e-4 * octave_rate(sweep) * heard ** 2 / 4 / np.clip(f, f1, f2)
    skirt = lambda zero, full: np.sin(np.pi / 2 * np.clip((f - zero) / (full - zero), 0, 1)) ** 2
    band = skirt(0.2 * f1, 1.2 * f1) * skirt(f2, 0.92 * f2)
    return size, band * np.conj(spectrum) / (np.abs(spectrum) ** 2 + floor)


def deconvolve(heard, sweep, rate, ratio, length, late=0.0):
    """Response of `length` samples; the sweep starts `late` of a sample after its place."""
    size, inverse = inverse_of(json.dumps(sweep), rate, len(heard), ratio)
    spectrum = fft.rfft(heard, size) * inverse
    if late:
        spectrum *= np.exp(2j * np.pi * late / size * np.arange(len(spectrum)))
    ends = int(0.002 * rate)
    return faded(fft.irfft(spectrum, size)[:length], ends, ends)


def respond(x, take, ratio, at, index):
    """The response, the same from before its harmonics on, what was heard, where the sweep is."""
    rate, segment = take["sampleRate"], take["segments"][index]
    sweep = segment["sweep"]
    heard_rate = rate * ratio
    pre, before = int(round(PRE * heard_rate)), int(before_seconds(sweep) * heard_rate) + 1
    start = at[index] + (segment["sweepStart"] - segment["markStart"]) * ratio
    first = int(np.floor(start))
    length = before + int(round(POST * heard_rate))
    needed = length + int(np.ceil(sweep["lengthSamples"] * ratio))
    piece = x[max(first - before, 0):first - before + needed]
    piece = np.pad(piece, (max(before - first, 0), 0))
    piece = np.pad(piece, (0, needed - len(piece)))
    long = deconvolve(piece, sweep, rate, ratio, length, start - first)
    ir = long[before - pre:].copy()
    ir[:int(0.002 * rate)] *= rise(int(0.002 * rate))
    end = first + int(np.ceil((segment["end"] - segment["sweepStart"]) * ratio))
    return ir, long, x[first - pre:end], pre, before


def silence_of(x, take, ratio, at):
    silence, rate = take["silence"], take["sampleRate"]
    first = at[0] - take["markStarts"][0] * ratio
    low, high = silence["start"] + 0.02 * rate, silence["start"] + silence["length"]
    return x[max(0, int(np.ceil(first + low * ratio))):int(first + high * ratio)]


def noise_response(silence, segment, rate, ratio):
    pre, whole = int(round(PRE * rate * ratio)), int(round((PRE + POST) * rate * ratio))
    length = int(np.ceil((segment["end"] - segment["sweepStart"]) * ratio)) + pre
    heard = np.resize(silence[max(0, len(silence) - length):], length)
    needed = whole + int(np.ceil(segment["sweep"]["lengthSamples"] * ratio))
    heard = np.pad(heard[:needed], (0, max(0, needed - length)))
    return deconvolve(heard, segment["sweep"], rate, ratio, whole)
