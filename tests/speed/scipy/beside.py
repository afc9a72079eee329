"""Listens for sound in a segment that is not the take's, in third-octaves and frames of time."""
import functools

import numpy as np
from scipy import fft, ndimage, signal

from events import read_events
from responses import octave_rate

TIERS = ((0, 0.34, 4, True), (75, 0.085, 2, True), (600, 0.0213, 1, False))
MIDS = 1000 * 2.0 ** (np.arange(-18, 13) / 3)
EDGE = 2 ** (1 / 6)
HARMONICS = ((2, -22), (3, -22), (4, -34), (5, -34), (6, -40), (7, -40))


@functools.lru_cache(maxsize=8)
def tier(size, rate, mids):
    """Window of unit energy, and the shares of the lines in each band as a matrix."""
    window = signal.windows.nuttall(size, sym=False)
    lines = np.arange(size // 2 + 1)[:, None]
    mids = np.array(mids)[None, :]
    low, high = mids / EDGE * size / rate, mids * EDGE * size / rate
    covered = np.minimum(high, lines + 0.5) - np.maximum(low, lines - 0.5)
    return window / np.sqrt(np.sum(window ** 2)), 2 / size * np.maximum(covered, 0)


def tiles(x, rate):
    """Mean square per band and frame, seconds of each band's window, and the hop in samples."""
    factor = max(1, round(rate / 3000))
    hop = factor * round(0.0107 * rate / factor)
    frames = len(x) // hop + 1
    thin = signal.resample_poly(x, 1, factor)
    power, seconds = [], []
    for k, (from_hz, length, stride, thinned) in enumerate(TIERS):
        end = TIERS[k + 1][0] if k + 1 < len(TIERS) else np.inf
        own = tuple(MIDS[(MIDS >= from_hz) & (MIDS < end)])
        own_rate, step, y = (rate / factor, hop // factor, thin) if thinned else (rate, hop, x)
        size = 2 ** round(np.log2(length * own_rate))
        window, shares = tier(size, own_rate, own)
        y = np.pad(y, (size // 2, size + step * stride))
        views = np.lib.stride_tricks.sliding_window_view(y, size)[:frames * step:stride * step]
        bins = fft.rfft(views * window)
        read = (np.square(bins.real) + np.square(bins.imag)) @ shares
        at = np.minimum((np.arange(frames) + stride // 2) // stride, len(read) - 1)
        power.append(read[at].T)
        seconds += [size / own_rate + (stride - 1) * hop / rate] * len(own)
    return np.concatenate(power), np.array(seconds), hop


def floors_of(silence, rate):
    power, seconds, hop = tiles(silence, rate)
    out = []
    for row, long in zip(power, seconds):
        edge = int(np.ceil(0.5 * long * rate / hop))
        row = np.sort(row[edge:-edge])
        out.append(min(row.mean(), 1.25 * row[:int(np.ceil(0.95 * len(row)))].mean()))
    return np.array(out)


def bands_of(ir, sweep, rate, floors, arrival):
    """Energy of the response per band, what turns power in the capture into it, and decays."""
    power, seconds, hop = tiles(ir, rate)
    gain = 4 * MIDS / (octave_rate(sweep) * rate ** 2)
    noise = floors * gain * len(ir)
    smooth = ndimage.uniform_filter1d(power, 5, axis=1, mode="constant")
    decays = np.full(len(MIDS), np.nan)
    for b, row in enumerate(smooth):
        reach = int(np.ceil((0.1 + seconds[b] / 2) * rate / hop))
        low = max(0, arrival // hop - reach)
        peak = low + row[low:arrival // hop + reach + 1].argmax()
        target = row[peak] * 10 ** -1.5
        if target < 2 * floors[b] * gain[b]:
            continue
        under = np.flatnonzero(row[peak:] <= target)
        frames = under[0] if len(under) else len(row) - peak
        decays[b] = 4 * max(frames * hop / rate - 0.3 * seconds[b] - hop / rate, hop / rate)
    usual = np.nanmedian(decays) if np.any(np.isfinite(decays)) else 0.6
    known = np.where(np.isfinite(decays), decays, usual)
    decays = np.clip(1.3 * ndimage.median_filter(known, 3), 0.15, 1.6)
    return np.maximum(hop * power.sum(1) - noise, 0), gain, decays


def own_sound(shape, seconds, hop, energy, gain, decays, floors, sweep, rate, sweep_at, arrival):
    """Where the take sounds itself, and the power a bent decay may still have."""
    hidden, late = np.zeros(shape, bool), np.zeros(shape)
    slow = octave_rate(sweep)
    at = lambda hz: slow * np.log(hz / sweep["startHz"])
    frame_at = lambda s: ((s + arrival / rate) * rate + sweep_at) / hop
    third = slow * np.log(2) / 3
    for b, mid in enumerate(MIDS):
        half, leak = seconds[b] / 2, 4 / seconds[b]
        own = energy / gain / (max(seconds[b], decays[b] / 13.8, third) * rate)

        def hide(order, db):
            low = max((mid / EDGE - leak) / order, sweep["startHz"])
            high = min((mid * EDGE + leak) / order, sweep["endHz"])
            if high <= low or db <= 0:
                return
            fall = decays[b] / 60 * min(db, 30 if order > 1 else 65)
            first = max(0, int(frame_at(at(low) - half)))
            hidden[b, first:max(first, int(np.ceil(frame_at(at(high) + half + fall))) + 1)] = True

        edge = int(np.ceil(half * rate / hop))
        hidden[b, :edge] = hidden[b, shape[1] - edge:] = True
        hide(1, 10 * np.log10(own[b] / (0.25 * floors[b]) + 1e-30))
        for order, usual in HARMONICS:
            source = own[np.abs(np.log(MIDS / (mid / order))).argmin()]
            level = -10 if mid / order < 110 else usual
            hide(order, 10 * np.log10(max(own[b], source) / (0.25 * floors[b]) + 1e-30) + level)
        passed = frame_at(at(min(mid * EDGE, sweep["endHz"])) + half)
        n = np.arange(max(0, int(np.ceil(passed))), shape[1])
        late[b, n] = own[b] * 10 ** -(0.8 + 2.4 * (n - passed) * hop / rate / max(decays[b], 0.01))
    return hidden, np.where(late < 0.1 * floors[:, None], 0, late)


def sound_beside(heard, sweep_at, sweep, ir, pre, rate, floors, played):
    """How far each sound in the tiles the take leaves free may move the response, decibels."""
    near = int(0.12 * rate)
    arrival = pre - near + np.abs(ir[pre - near:pre + near + 1]).argmax()
    power, seconds, hop = tiles(heard, rate)
    energy, gain, decays = bands_of(ir, sweep, rate, floors, arrival)
    hidden, late = own_sound(power.shape, seconds, hop, energy, gain, decays, floors, sweep, rate,
                             sweep_at, arrival - pre)
    seen = np.zeros(power.shape)
    for b, row in enumerate(power):
        reach = 2 * round(0.5 * max(0.05, 1.5 * seconds[b]) * rate / hop) + 1
        free = (~hidden[b]).astype(float)
        sums = ndimage.uniform_filter1d(row * free, reach, mode="constant") * reach
        counts = ndimage.uniform_filter1d(free, reach, mode="constant") * reach
        span = seconds[b] / 2 + counts * hop / rate
        freedom = 2 * np.maximum(1, MIDS[b] * (EDGE - 1 / EDGE) * span)
        spread = 2 / (9 * freedom)
        most = np.maximum(2, (1 - spread + 3.7 * np.sqrt(spread)) ** 3)
        shows = (sums > (most * floors[b] + late[b]) * counts) & ~hidden[b]
        seen[b] = np.where(shows, np.maximum(row - floors[b], 0), 0)
    return read_events(seen, hidden, seconds, hop, energy, gain, floors, sweep, rate, sweep_at, pre,
                       ir, played, MIDS)
