"""Level of pink noise behind a response, and what the noise in it leaves open."""
import numpy as np
from scipy import stats

# What takes without any noise leave of a level, dB.
LEFT = {"main": 0.00004, "sub": 0.0044}


def shares_of(spacing, low, high):
    k = np.arange(int(round(low / spacing)), int(round(high / spacing)) + 1)
    edges = np.minimum((k + 0.5) * spacing, high) / np.maximum((k - 0.5) * spacing, low)
    return k, np.log(edges) / np.log(high / low)


def read_level(power, noise, spacing, is_sub, ir, hiss, rate, silence_seconds):
    """Level, dB, without the noise's share, and both halves of its 90 % interval."""
    k, share = shares_of(spacing, *((30, 80) if is_sub else (500, 2000)))
    audible = np.sqrt(np.mean(np.square(hiss))) / 100
    lasts, hiss_lasts = ((np.flatnonzero(np.abs(x) > audible)[-1] + 1) / rate for x in (ir, hiss))
    known = min(hiss_lasts, silence_seconds)
    repeated, of_heard, of_silence = hiss_lasts / known, 1 / (lasts * spacing), 1 / (known * spacing)
    whole, quiet = power[k], lasts / hiss_lasts * noise[k]
    squared = quiet ** 2 / (2 * repeated)
    own = np.dot(share, whole - quiet)
    cross = share ** 2 * of_heard * 2 * (whole * quiet - squared)
    square = share ** 2 * (of_heard + of_silence) * squared
    both = cross + square
    freedom = 2 * both.sum() ** 2 / (np.sum(both ** 2) * of_silence / (2 * repeated))
    t = stats.t.ppf(0.95, max(freedom, 4)) ** 2
    slope = t * max(0, cross.sum()) / own
    half = np.sqrt(slope * own + t * square.sum() + slope ** 2 / 4)
    ends = 10 * np.log10(np.maximum(own + slope / 2 + np.array([-half, half]), own / 100))
    level, left = 10 * np.log10(own), LEFT["sub" if is_sub else "main"]
    return level, np.hypot(ends - level, left)
