"""Harmonics 2 to 5 of a sweep from its deconvolved response, each through its own window."""
import numpy as np
from scipy import signal

from responses import lead_of, octave_rate
from shared import decibels, faded, integral, power_spectrum, rise

ORDERS = (2, 3, 4, 5, 6)
HALF = 2 ** (1 / 12)


def windows_of(sweep, rate, arrival):
    """Start, lead, length, fade in and out of each order's window, in samples."""
    lead = {k: round(lead_of(sweep, k) * rate) for k in (1, *ORDERS)}
    slow = octave_rate(sweep) * rate
    start = {k: round(arrival - slow * np.log(k)) - lead[k] for k in (1, *ORDERS)}
    out = {}
    for k in ORDERS:
        length = start[k - 1] - start[k]
        share = 0.5 if k == 2 else 0.15
        out[k] = (start[k], lead[k], length, min(lead[k], length // 4), round(share * length))
    return out, lead[1]


def through(x, window, shift=0):
    start, _, length, fade_in, fade_out = window
    piece, first = np.zeros(length), start + shift
    inside = x[max(first, 0):max(first + length, 0)]
    piece[max(-first, 0):max(-first, 0) + len(inside)] = inside
    return faded(piece, fade_in, fade_out)


def energies(piece, rate, padding, hz):
    """Mean |H|² in 1/6 octaves round each frequency."""
    power, spacing = power_spectrum(piece, rate, rate / (padding * len(piece)))
    upto = integral(power, spacing)
    return np.maximum(upto(hz * HALF) - upto(hz / HALF), 0) / (hz * (HALF - 1 / HALF))


def noise_twice(noise, rate):
    """Noise's spectrum integrated twice, per sample, made once for all windows."""
    power, spacing = power_spectrum(noise, rate)
    once = integral(power, spacing)(np.arange(len(power)) * spacing)
    twice = np.concatenate([[0], np.cumsum(0.5 * spacing * (once[1:] + once[:-1]))]) / len(noise)
    return lambda hz: np.interp(hz / spacing, np.arange(len(twice)), twice)


def noise_in(twice, window, rate, hz):
    _, _, length, fade_in, fade_out = window
    energy, reach = length - 5 / 8 * (fade_in + fade_out), 0.5 * rate / length
    low, high = hz / HALF, hz * HALF
    both = twice(high + reach) - twice(high - reach) - twice(low + reach) + twice(low - reach)
    return np.maximum(both, 0) * energy / (2 * reach * (high - low))


def read_at(x, rate, sweep, arrival, twice, hz, thinned):
    """Per order: heard, noise, own response in its window, tail of the order above; at `hz`."""
    windows, lead = windows_of(sweep, rate, arrival)
    padding, count = (3 if thinned else 1), round(0.5 * rate)
    whole = (round(arrival) - lead, lead, count, lead, round(0.15 * count))
    most = max(w[2] for w in windows.values())
    early = (*whole[:2], min(2 * most, count), lead, round(0.15 * min(2 * most, count)))
    alone = np.concatenate([np.zeros(most), through(x, early)])
    turned = np.imag(signal.hilbert(alone, 2 * len(alone)))[:len(alone)] if thinned else alone
    as_order = lambda order, window: energies(
        through(turned if order % 2 == 0 else alone, window,
                most + lead - (windows[order][0] + windows[order][1])), rate, padding, hz)
    own = {"linear": energies(through(x, whole), rate, padding, hz),
           "linear_noise": noise_in(twice, whole, rate, hz)}
    for k in ORDERS:
        window = windows[k]
        own[k] = (energies(through(x, window), rate, padding, hz),
                  noise_in(twice, window, rate, hz), as_order(k, window),
                  as_order(k + 1, window) if k + 1 in windows else None, window)
    return own


def read_harmonics(long, zero, sweep, rate, twice):
    near = int(0.12 * rate)
    peak = zero - near + np.abs(long[zero - near:zero + near + 1]).argmax()
    rising = np.abs(long[max(0, peak - int(0.015 * rate)):peak + 1]) >= 0.1 * abs(long[peak])
    arrival = max(0, peak - int(0.015 * rate)) + rising.argmax()
    end, factor = 0.86 * sweep["endHz"], max(1, int(rate / 3000))
    low = max(16, 1.6 * sweep["startHz"])
    grid = 1000 * 2.0 ** (np.arange(np.ceil(6 * np.log2(low / 1000)),
                                    np.floor(6 * np.log2(end / 2000)) + 1) / 6)
    hz = np.concatenate([grid * k for k in (1, 2, 3, 4, 5)])
    used = long[:int(arrival + 0.5 * rate) + 1]
    thin = factor * signal.resample_poly(used, 1, factor)
    read = read_at(thin, rate / factor, sweep, arrival / factor, twice, hz, True)
    if end >= 700:
        above = read_at(long, rate, sweep, arrival, twice, hz, False)
        pick = lambda a, b: None if a is None else np.where(hz < 700, a, b)
        read = {k: tuple(pick(a, b) for a, b in zip(v[:4], above[k][:4])) + (v[4],)
                if isinstance(k, int) else pick(v, above[k]) for k, v in read.items()}
    n, out = len(grid), {}
    fundamental = read["linear"] - read["linear_noise"]
    sure_there = fundamental >= 10 * read["linear_noise"]
    for k in (2, 3, 4, 5):
        at = slice((k - 1) * n, k * n)
        heard, noise, own, late, window = (v[at] if isinstance(v, np.ndarray) else v
                                           for v in read[k])
        above = read[k + 1]
        share = np.clip((own - noise) / np.maximum(fundamental[at], 1e-30), 0, 1)
        tail = np.maximum(above[0][at] - above[1][at], 0) * np.clip(
            np.maximum(late - noise, 0) / np.maximum(above[2][at] - above[1][at], 1e-30), 0, 1)
        spread = 2 / (9 * np.maximum(2, 2 * hz[at] * (HALF - 1 / HALF) * window[2] / rate))
        surely = noise * (1 - spread + 2.3 * np.sqrt(spread)) ** 3
        told = ((hz[at] <= end) & sure_there[:n] & (heard >= surely) & (share >= 0.5)
                & (tail <= 0.25 * (heard - noise)) & sure_there[at])
        ratio = (heard - noise - tail) / np.maximum(share, 0.5) / np.maximum(fundamental[:n], 1e-30)
        out[k] = np.where(told, decibels(ratio), np.nan)
    total = decibels(sum(np.nan_to_num(10 ** (v / 10)) for v in out.values()))
    return grid, out, total
