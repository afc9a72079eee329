"""Roll-off: posterior over box models, given what rooms do to the level at a seat."""
import functools
import json
import os

import numpy as np
from scipy import fft, linalg, optimize

from shared import band_means, rise

HZ = 15 * 2 ** (np.arange(61) / 12)
F0_STEPS, CURVE_STEPS = np.arange(-27, 143, 3), np.arange(-21, 183, 2)
F0 = 15 * 2 ** (F0_STEPS / 36)
CURVE = 15 * 2 ** (CURVE_STEPS / 36)
EARLY = (0.02, 0.08)
DB = 10 / np.log(10)
SOFT = 1e-3
LOW = np.maximum(3 * np.arange(21) - 3, 0)
HIGH = np.minimum(3 * np.arange(21) + 3, 60)
MEANS = ((np.arange(61) >= LOW[:, None]) & (np.arange(61) <= HIGH[:, None])).astype(float)
MEANS /= MEANS.sum(1, keepdims=True)
MIDDLE = 15 * 2 ** ((LOW + HIGH) / 2 / 12)


# --- boxes ---------------------------------------------------------------------------------------

def vented(t):
    """Denominator of the alignment t, descending powers: fourth-order Butterworth at 0."""
    if t <= 0:
        angles = np.array([np.pi / 8, 3 * np.pi / 8])
        poles = -(1 + 0.45 * t) * np.sin(angles) + 1j * np.cos(angles)
        d = np.real(np.poly(np.concatenate([poles, np.conj(poles)])))
        return d * (d[-1] ** -0.25) ** np.arange(5)
    rest = lambda a: ((a ** 4 / 4 + 2) / (2 * a)) ** 2 - a ** 2 - 4 * t
    a3 = optimize.brentq(rest, 2.5, 4)
    return np.array([1, (a3 ** 4 / 4 + 2) / (2 * a3), a3 ** 2 / 2, a3, 1])


def shapes():
    """Numerator's order, denominator and log prior of every shape, f0 = 1."""
    mass = lambda q: np.exp(-0.5 * ((q - 0.78) / 0.25) ** 2)
    qs, guarded = np.arange(0.4, 1.41, 0.1), np.arange(0.5, 1.11, 0.3)
    for q in qs:
        yield 2, np.array([1, 1 / q, 1]), np.log(0.8 * mass(q) / mass(qs).sum() / 2)
    for q in guarded:
        for corner in (0.5, 0.7, 0.9):
            guard = np.array([1, np.sqrt(2) * corner, corner ** 2])
            prior = np.log(0.2 * mass(q) / mass(guarded).sum() / 3 / 2)
            yield 4, np.polymul([1, 1 / q, 1], guard), prior
    for t in np.arange(-1, 1.01, 0.25):
        yield 4, vented(t), np.log(1 / 9 / 2)


def power_of(order, denominator, s):
    return np.abs(s) ** (2 * order) / np.abs(np.polyval(denominator, s)) ** 2


@functools.lru_cache(maxsize=1)
def grid():
    """Levels of all models at the entries and on the curve, their corners, priors; once."""
    entries, curve, corners, prior = [], [], [], []
    w = np.exp(np.linspace(np.log(0.01), np.log(100), 4000))
    for order, denominator, log_prior in shapes():
        power = power_of(order, denominator, 1j * HZ[None, :] / F0[:, None]) @ MEANS.T
        parts = [power]
        for tau in EARLY:
            s = 1 / (2 * np.pi * tau * F0[:, None]) + 1j * HZ[None, :] / F0[:, None]
            parts.append(power_of(order, denominator, s) @ MEANS.T)
        entries.append(np.concatenate(parts, axis=1))
        curve.append(power_of(order, denominator, 1j * CURVE[None, :] / F0[:, None]))
        level = 10 * np.log10(power_of(order, denominator, 1j * w))
        corners.append(F0[:, None] * [w[np.flatnonzero(level < -d)[-1]] for d in (3.0103, 6, 10)])
        prior.append(np.where(corners[-1][:, 0] < 14, -np.inf, log_prior))
    return (np.concatenate(entries), 10 * np.log10(np.concatenate(curve) + 1e-10),
            np.concatenate(corners), np.concatenate(prior))


# --- rooms ---------------------------------------------------------------------------------------

@functools.lru_cache(maxsize=1)
def learnt():
    """The project's tables of rooms, written beside the take: data, not code."""
    with open(os.environ["LEARNT"]) as file:
        return {name: np.array(values) for name, values in json.load(file).items()}


@functools.lru_cache(maxsize=4)
def room_covariance(first, last, windows):
    tables = learnt()
    inside = np.tile((LOW >= first) & (HIGH <= last), windows)
    entries = np.flatnonzero(inside)
    octave = np.log2(HZ[3 * (entries % 21)]) - 7.6
    tau = np.array([np.inf, *EARLY])[entries // 21]
    late = 20 / np.log(10) * 2e-3 / tau
    stiff = np.array([2, 0.8, 1.5])[entries // 21]
    lift = stiff * np.clip(np.log(120 / HZ[3 * (entries % 21)]) / np.log(3), 0, 1)
    rooms = sum(tables[name][:, entries].T @ tables[name][:, entries]
                for name in ("ofRoom", "ofPlace", "ofReading"))
    c = (0.85 * rooms + np.exp(-0.5 * ((octave[:, None] - octave[None, :]) / 0.5) ** 2)
         + 0.16 * np.outer(octave, octave) + 400 + np.outer(late, late) + np.outer(lift, lift)
         + 0.2 * np.eye(len(entries)))
    return entries, c, tables["mean"][entries]


# --- bands ---------------------------------------------------------------------------------------

def bands_of(x, rate, size, low=HZ * 2 ** (-1 / 24), high=HZ * 2 ** (1 / 24)):
    power = np.square(np.abs(fft.rfft(x, size)[:int(1100 / rate * size)]))
    return band_means(power, rate / size, low, high)


def rolloff_bands(ir, noise, rate):
    """Power and noise per band, the same of the early parts, independent lines per band."""
    peak, taper = np.abs(ir).argmax(), int(0.25 * rate)
    start = max(0, peak - int(0.1 * rate))
    cut = ir[start:peak + int(1.25 * rate)].copy()
    own = noise[start:start + len(cut)].copy()
    cut[-taper:] *= rise(taper)[::-1]
    own[-taper:] *= rise(taper)[::-1]
    size = fft.next_fast_len(max(len(cut), int(rate / 0.75)), real=True)
    hiss, seconds = bands_of(own, rate, size), len(cut) / rate
    spectrum = fft.rfft(cut, size)
    total = band_means(np.square(np.abs(spectrum[:int(1100 / rate * size)])), rate / size,
                       HZ * 2 ** (-1 / 24), HZ * 2 ** (1 / 24))
    small = fft.next_fast_len(int(2000 * size / rate), real=True)
    f = np.arange(small // 2 + 1) * rate / size
    gain = np.cos(np.pi / 2 * np.clip((f - 530) / 470, 0, 1)) ** 2
    slow_rate = small * rate / size
    slow = fft.irfft(gain * spectrum[:len(f)], small)[:int(seconds * slow_rate)]
    onset = np.argmax(np.abs(slow) >= 0.3 * np.abs(slow).max())
    first = max(0, onset - round(0.02 * slow_rate))
    parts = [(total - hiss, hiss)]
    for tau in EARLY:
        window = np.exp(-np.maximum(np.arange(len(slow)) - onset, 0) / (tau * slow_rate))
        window[:first] = 0
        share = hiss * np.sum(window ** 2) / slow_rate / (seconds - 0.625 * 0.25)
        parts.append((bands_of(slow * window, slow_rate, small) - share, share))
    lines = np.maximum(1, HZ * (2 ** (1 / 24) - 2 ** (-1 / 24)) * max(seconds - 0.25, 0.05))
    return parts, lines


# --- fit -----------------------------------------------------------------------------------------

def quantiles(values, weights, wanted):
    order = np.argsort(values)
    return np.interp(wanted, np.cumsum(weights[order]), values[order])


def curve_quantiles(levels, weights):
    """5, 50 and 95 % of the level at every frequency of the curve at once."""
    order = np.argsort(levels, axis=0)
    sums = np.cumsum(weights[order], axis=0)
    rows = [np.argmax(sums >= share * sums[-1], axis=0) for share in (0.05, 0.5, 0.95)]
    ordered = np.take_along_axis(levels, order, axis=0)
    return [ordered[row, np.arange(levels.shape[1])] for row in rows]


def posterior(parts, lines, first, last, share):
    models, curve, corners, prior = grid()
    entries, c, mean = room_covariance(first, last, len(parts))
    top = slice(max(last + 1 - 18, first), last + 1)
    power, own = parts[0]
    reference = np.exp(np.mean(np.log(np.maximum(np.maximum(power, own), 1e-12)[top])))
    signal = np.concatenate([MEANS @ p for p, _ in parts])[entries] / reference
    noise = np.concatenate([MEANS @ n for _, n in parts])[entries] / reference
    floor = SOFT + share * noise
    lifted = np.maximum(signal, -0.4 * (floor - SOFT)) + floor
    heard, hiss = np.maximum(power, 0) / reference, own / reference
    variance = (2 * heard * hiss + hiss ** 2) / lines + hiss ** 2 / (3 * lines)
    window, mid = entries // 21, MIDDLE[entries % 21]
    whole = MEANS @ np.diag(variance) @ MEANS.T
    added = np.where((window == 0)[:, None] & (window == 0)[None, :],
                     whole[np.ix_(entries % 21, entries % 21)], 0)
    for k, tau in enumerate(EARLY[:len(parts) - 1]):
        here = window == k + 1
        alone = 2 * np.maximum(signal, 0) * noise + noise ** 2
        alone = np.where(here, alone / np.maximum(1, 0.41 * mid * tau), 0)
        added += np.sqrt(np.outer(alone, alone)) / (
            1 + (np.pi * tau * (mid[:, None] - mid[None, :])) ** 2)
    factor = linalg.cholesky(c + DB ** 2 * added / np.outer(lifted, lifted), lower=True)
    data = DB * np.log(lifted) - mean
    residual = data[None, :] - DB * np.log(models[:, entries] + floor[None, :])
    white = linalg.solve_triangular(factor, residual.T, lower=True, check_finite=False)
    log = prior - 0.5 * np.sum(np.square(white), axis=0)
    log = np.where(corners[:, 0] > min(200, 0.7 * HZ[last]), -np.inf, log)
    weights = np.exp(log - log.max())
    weights /= weights.sum()
    kept = weights > 1e-6
    found = [quantiles(corners[kept, k], weights[kept], [0.05, 0.5, 0.8, 0.95]) for k in range(3)]
    return found, curve_quantiles(curve[kept], weights[kept])


def fit_rolloff(ir, noise, rate, is_sub):
    parts, lines = rolloff_bands(ir, noise, rate)
    if is_sub:
        parts = parts[:1]
    last = int(np.flatnonzero(HZ <= (90 if is_sub else 500))[-1])
    found = posterior(parts, lines, 0, last, 1)
    power, own = parts[0]
    if np.min(power[:last + 1] / own[:last + 1]) < 100:
        wide = posterior(parts, lines, 0, last, 0.03)
        for mine, other in zip(found[0], wide[0]):
            mine[0], mine[-1] = min(mine[0], other[0]), max(mine[-1], other[-1])
    return found
