"""Reads a take with NumPy and SciPy: the same work as src/reading/read-take, for comparison.

python3 read_take.py FOLDER RUNS   reads FOLDER/take.json and FOLDER/capture.f32 RUNS times and
prints seconds per stage and what was read, as JSON. One thread. Written from the published
methods with SciPy's own tools where it has them, vectorised, caches as in the project.
"""
import json
import os
import sys
import time

for name in ("OMP_NUM_THREADS", "OPENBLAS_NUM_THREADS", "MKL_NUM_THREADS"):
    os.environ[name] = "1"

import numpy as np
from scipy import fft, linalg, ndimage, signal, stats

PRE, POST = 0.17, 1.36


def rise(count):
    return np.sin(np.pi * (np.arange(count) + 0.5) / (2 * count)) ** 2


def faded(x, fade_in, fade_out):
    x[:fade_in] *= rise(fade_in)
    x[len(x) - fade_out:] *= rise(fade_out)[::-1]
    return x


# --- clock ---------------------------------------------------------------------------------------

def chirp(mark, rate):
    t = np.arange(mark["lengthSamples"]) / rate
    x = signal.chirp(t, mark["startHz"], mark["lengthSamples"] / rate, mark["endHz"], phi=-90)
    return faded(x, mark["fadeSamples"], mark["fadeSamples"])


def normalised_match(x, template):
    """Squared normalised correlation of the template with x from each sample on."""
    match = signal.oaconvolve(x, template[::-1], mode="valid") ** 2
    sums = np.concatenate([[0], np.cumsum(x ** 2)])
    energy = sums[len(template):] - sums[:-len(template)]
    return match / ((energy + 1e-9 * energy.max()) * np.dot(template, template))


def find_marks(x, take):
    rate, mark, starts = take["sampleRate"], take["mark"], np.array(take["markStarts"])
    sos = signal.butter(4, [0.8 * mark["startHz"], 1.05 * mark["endHz"]], "bandpass", fs=rate,
                        output="sos")
    x = signal.sosfiltfilt(sos, x)
    bare = normalised_match(x, chirp(mark, rate))
    peaks, found = signal.find_peaks(bare, height=0.02, distance=int(0.2 * rate))
    seed = peaks[np.argmax(found["peak_heights"])]
    width = int((0.03 + 0.035) * rate)
    received = x[seed:seed + width]
    match = normalised_match(x, received)
    peaks, found = signal.find_peaks(match, height=0.12, distance=int(0.2 * rate))
    offsets = peaks[:, None] - starts[None, :]
    votes = np.abs(offsets.ravel()[:, None] - offsets.ravel()[None, :]) < 600e-6 * len(x) + 24
    offset = offsets.ravel()[votes.sum(1).argmax()]
    coarse = np.array([peaks[np.abs(peaks - s - offset).argmin()] for s in starts])
    return refine_marks(x, coarse, width)


def refine_marks(x, coarse, width, rounds=4):
    """Aligns the received marks with their own mean; positions by interpolated correlation."""
    edge, size = 96, int(2 ** np.ceil(np.log2(width + 300)))
    window = faded(np.ones(width), edge, edge)
    spectra = fft.rfft([x[c:c + width] * window for c in coarse], size)
    shift, turn = np.zeros(len(coarse)), 2j * np.pi * np.arange(size // 2 + 1) / size
    template = spectra[0]
    for _ in range(rounds):
        cross = spectra * np.conj(template)
        fine = fft.irfft(cross, 16 * size)
        fine = np.concatenate([fine[:, -192:], fine[:, :193]], axis=1)
        top = np.clip(fine.argmax(1), 1, fine.shape[1] - 2)
        rows = np.arange(len(coarse))
        a, b, c = fine[rows, top - 1], fine[rows, top], fine[rows, top + 1]
        shift = (top - 192 + 0.5 * (a - c) / (a - 2 * b + c)) / 16
        template = np.mean(spectra * np.exp(turn[None, :] * shift[:, None]), axis=0)
    return coarse + shift


def estimate_clock(x, take):
    starts, at = np.array(take["markStarts"]), find_marks(x, take)
    slope = stats.theilslopes(at, starts)[0]
    left = at - starts * slope
    good = np.abs(left - np.median(left)) < 3
    return stats.linregress(starts[good], at[good]).slope, at


# --- impulse responses ---------------------------------------------------------------------------

def resample(x, start, ratio, length):
    """Values at start + ratio n: four times finer by FFT, then a quintic spline (-107 dB)."""
    first, margin = int(np.floor(start)), 300
    low, high = first - margin, first + int(length * ratio) + margin + 1
    piece = x[max(low, 0):min(high, len(x))]
    piece = np.pad(piece, (max(-low, 0), max(high - len(x), 0)))
    size = fft.next_fast_len(len(piece), real=True)
    fine = 4 * fft.irfft(fft.rfft(piece, size), 4 * size)
    at = (start - low + ratio * np.arange(length)) * 4
    return ndimage.map_coordinates(fine, [at], order=5)


inverses = {}


def inverse_of(sweep, rate, used):
    key = json.dumps(sweep)
    if key not in inverses:
        n, f1, f2 = sweep["lengthSamples"], sweep["startHz"], sweep["endHz"]
        x = signal.chirp(np.arange(n) / rate, f1, n / rate, f2, method="logarithmic", phi=-90)
        x = faded(x, sweep["fadeInSamples"], sweep["fadeOutSamples"])
        size = fft.next_fast_len(used, real=True)
        f, spectrum = fft.rfftfreq(size, 1 / rate), fft.rfft(x, size)
        octave = n / rate / np.log(f2 / f1)
        floor = 1e-4 * octave * rate ** 2 / 4 / np.clip(f, f1, f2)
        skirt = lambda zero, full: np.sin(np.pi / 2 * np.clip((f - zero) / (full - zero), 0, 1)) ** 2
        band = skirt(0.2 * f1, 1.2 * f1) * skirt(f2, 0.92 * f2)
        inverses[key] = size, band * np.conj(spectrum) / (np.abs(spectrum) ** 2 + floor)
    return inverses[key]


def respond(heard, sweep, rate):
    length = int(PRE * rate) + int(round(POST * rate))
    size, inverse = inverse_of(sweep, rate, length + sweep["lengthSamples"])
    ends = int(0.002 * rate)
    return faded(fft.irfft(fft.rfft(heard[:size], size) * inverse, size)[:length], ends, ends)


def segment_response(x, take, clock, at, index):
    rate, segment = take["sampleRate"], take["segments"][index]
    pre = int(PRE * rate)
    start = at[index] + (segment["sweepStart"] - pre - segment["markStart"]) * clock
    heard = resample(x, start, clock, segment["end"] - segment["sweepStart"] + pre)
    return respond(heard, segment["sweep"], rate)


def noise_response(x, take, clock, at, index):
    rate, segment, silence = take["sampleRate"], take["segments"][index], take["silence"]
    length = segment["end"] - segment["sweepStart"] + int(PRE * rate)
    held = int(min(length, silence["length"] - 0.1 * rate))
    end = silence["start"] + silence["length"]
    start = at[0] + (end - held - take["markStarts"][0]) * clock
    held -= max(0, int(np.ceil(-start)))
    start = at[0] + (end - held - take["markStarts"][0]) * clock
    return respond(np.resize(resample(x, start, clock, held), length), segment["sweep"], rate)


# --- readings ------------------------------------------------------------------------------------

def power_spectrum(ir, rate, spacing=1.0):
    size = int(2 ** np.ceil(np.log2(max(len(ir), rate / spacing))))
    return np.abs(fft.rfft(ir, size)) ** 2, rate / size


def band_means(power, spacing, low, high):
    """Mean power between band edges; a bin's power stands half a bin to each side."""
    sums = np.concatenate([[0], np.cumsum(power)]) - 0.5 * power[0]
    at = lambda f: np.interp(f / spacing + 0.5, np.arange(len(sums)), sums) * spacing
    return (at(high) - at(low)) / (high - low)


def pink_level(ir, rate, low, high):
    power, spacing = power_spectrum(ir, rate, low / 40)
    k = np.arange(int(round(low / spacing)), int(round(high / spacing)) + 1)
    share = np.log(np.minimum((k + 0.5) * spacing, high) / np.maximum((k - 0.5) * spacing, low))
    return 10 * np.log10(np.dot(power[k], share) / np.log(high / low))


def smoothed(ir, rate):
    power, spacing = power_spectrum(ir, rate)
    hz = 12 * 2 ** (np.arange(int(24 * np.log2(20000 / 12)) + 1) / 24)
    return 10 * np.log10(np.maximum(band_means(power, spacing, hz * 2 ** (-1 / 48),
                                               hz * 2 ** (1 / 48)), 1e-30))


def analytic(x, rate, low, high):
    size = fft.next_fast_len(len(x) + int(4 * rate / low), real=True)
    f = fft.rfftfreq(size, 1 / rate)
    with np.errstate(divide="ignore"):
        outside = np.maximum(np.maximum(np.log2(low / f), np.log2(f / high)), 0) / 0.35
    half = fft.rfft(x, size) * (1 + np.cos(np.pi * np.minimum(outside, 1)))
    whole = np.zeros(size, complex)
    whole[:len(half)] = half
    return fft.ifft(whole)[:len(x)]


def find_arrival(ir, rate, is_sub):
    band, low = ((60, 350), 0.04) if is_sub else ((3000, 18000), 0.015)
    z = analytic(ir, rate, *band)
    envelope = np.abs(z)
    coarse = envelope.argmax()
    before = int(low * rate) + 64
    first = max(coarse - before, 0)
    piece = z[first:coarse + int(0.002 * rate) + 64] * 1.0
    edge = rise(64)
    piece[:64] *= edge
    piece[-64:] *= edge[::-1]
    fine = np.abs(signal.resample(piece, 8 * len(piece)))
    strongest = fine[64 * 8:-64 * 8].argmax() + 64 * 8
    quiet = envelope[max(first - int(0.1 * rate), 0):first]
    noise = np.sqrt(np.mean(quiet ** 2) / 2) if len(quiet) > 96 else 0
    least = max(fine[strongest] * 10 ** (-20 / 20), noise * 10 ** (14 / 20))
    peaks = signal.argrelmax(fine)[0]
    ahead = ndimage.maximum_filter1d(fine, int(0.0005 * rate) * 8 + 1,
                                     origin=-(int(0.0005 * rate) * 4))
    good = peaks[(peaks >= 64 * 8) & (peaks <= strongest) & (fine[peaks] > least)
                 & (fine[peaks] >= 0.35 * ahead[peaks])]
    n = good[0] if len(good) else strongest
    a, b, c = fine[n - 1], fine[n], fine[n + 1]
    return first + (n + 0.5 * (a - c) / (a - 2 * b + c)) / 8


def read_polarity(ir, rate, at):
    low = max(int(at) - int(0.03 * rate), 0)
    band = analytic(ir[low:int(at) + int(0.03 * rate)], rate, 300, 3000).real
    near = band[int(at - low - 0.0003 * rate):int(at - low + 0.0006 * rate) + 1]
    n = np.arange(int(0.006 * rate))
    piece = ir[int(round(at)):int(round(at)) + len(n)]
    f = np.arange(200, 1500, 1 / 0.024)
    x = (piece * (1 + np.cos(np.pi * n[:len(piece)] / len(n))) / 2) @ np.exp(
        -2j * np.pi * np.outer(n[:len(piece)], f) / rate)
    weight = np.abs(x) / np.sqrt(f)
    return np.sign(near[np.abs(near).argmax()]), np.sum(weight * np.cos(np.angle(x))) / weight.sum()


def envelope_curve(ir, rate, origin):
    edges = np.ceil(origin + (-0.003 + 0.00005 * np.arange(461)) * rate).astype(int)
    level = np.maximum.reduceat(np.abs(ir), np.clip(edges, 0, len(ir) - 1))[:460]
    return level / level.max()


# --- roll-off ------------------------------------------------------------------------------------

HZ = 15 * 2 ** (np.arange(61) / 12)
F0 = 15 * 2 ** (np.arange(-27, 143, 3) / 36)
CURVE = 15 * 2 ** (np.arange(-21, 183, 2) / 36)
KNOTS = np.log([15, 18, 22, 28, 35, 45, 56, 70, 90, 112, 140, 180, 500])
GAIN = np.interp(np.log(HZ), KNOTS, [12, 9.3, 6.8, 7.8, 6.8, 2.4, .9, .7, .7, -.8, .6, 0, 0])
LIVELY = np.interp(np.log(HZ), KNOTS, [2, 2, 2, 2, 1.7, 1.4, 1.1, .8, .5, .3, .15, 0, 0])
SPREAD = np.interp(np.log(HZ), KNOTS, [5, 6, 7.4, 8.6, 7.4, 6.5, 6.8, 7, 6.5, 5.6, 4.5, 4.3, 3.9])
OCTAVE = np.log2(HZ) - 7.6


def vented(t):
    if t <= 0:
        p = signal.butter(4, 1, analog=True, output="zpk")[1]
        d = np.poly(p.real * (1 + 0.45 * t) + 1j * p.imag).real
        d = d[::-1] / d[-1]
        return d / d[0] / (d[-1] / d[0]) ** (np.arange(5) / 4)
    from scipy.optimize import brentq
    a1 = lambda a3: ((a3 ** 2 / 2) ** 2 + 2) / (2 * a3)
    a3 = brentq(lambda a: a1(a) ** 2 - a ** 2 - 4 * t, 2.5, 4)
    return np.array([1, a1(a3), a3 ** 2 / 2, a3, 1])


def shapes():
    closed = [(np.array([1, 1 / q, 1]), 2, -0.5 * ((q - 0.78) / 0.25) ** 2)
              for q in np.arange(0.4, 1.41, 0.1)]
    boxes = [(vented(t), 4, 0.0) for t in np.arange(-1, 1.01, 0.25)]
    for group in (closed, boxes):
        mass = np.log(2 * sum(np.exp(prior) for _, _, prior in group))
        for denominator, order, prior in group:
            yield denominator, order, prior - mass


def magnitude2(denominator, order, w):
    return w ** (2 * order) / np.abs(np.polyval(denominator, 1j * w)) ** 2


def grid():
    """Powers of all models at the bands and on the curve, f3, f6, f10, prior; computed once."""
    bands, curve, corners, prior = [], [], [], []
    w = np.exp(np.linspace(np.log(0.01), np.log(100), 4000))
    for denominator, order, log_prior in shapes():
        bands.append(magnitude2(denominator, order, HZ[None, :] / F0[:, None]))
        curve.append(magnitude2(denominator, order, CURVE[None, :] / F0[:, None]))
        level = 10 * np.log10(magnitude2(denominator, order, w))
        ratio = [w[np.flatnonzero(level < -d)[-1]] for d in (3.0103, 6, 10)]
        corners.append(F0[:, None] * np.array(ratio)[None, :])
        outside = (corners[-1][:, 0] < 14) | (corners[-1][:, 0] > 200)
        prior.append(np.where(outside, -np.inf, log_prior))
    return (np.concatenate(bands), 10 * np.log10(np.concatenate(curve) + 1e-9),
            np.concatenate(corners), np.concatenate(prior))


def rolloff_bands(ir, rate):
    peak = np.abs(ir).argmax()
    cut = ir[max(0, peak - int(0.1 * rate)):peak + int(1.25 * rate)]
    taper = int(0.25 * rate)
    cut = cut * 1.0
    cut[-taper:] *= rise(taper)[::-1]
    power, spacing = power_spectrum(cut, rate, 0.75)
    return band_means(power, spacing, HZ * 2 ** (-1 / 24), HZ * 2 ** (1 / 24)), cut


def decay_of(cut, rate):
    """Seconds per 60 dB from 180 to 500 Hz, from -5 to -20 dB of the backward integral."""
    size = fft.next_fast_len(len(cut), real=True)
    f = fft.rfftfreq(size, 1 / rate)
    gain = np.clip(np.minimum((f - 170) / 20, (530 - f) / 30), 0, 1)
    energy = fft.irfft(fft.rfft(cut, size) * gain, size)[:len(cut)] ** 2
    start = max(0, energy.argmax() - int(0.01 * rate))
    left = np.cumsum(energy[start:][::-1])[::-1]
    fall = lambda db: np.argmax(left < left[0] * 10 ** (db / 10))
    return (fall(-20) - fall(-5)) / rate * 4


def quantiles(values, weights, wanted):
    order = np.argsort(values)
    return np.interp(wanted, np.cumsum(weights[order]), values[order])


def averaging(n, half=3):
    apart = np.abs(np.arange(n)[:, None] - np.arange(n)[None, :]) <= half
    return apart / apart.sum(1, keepdims=True)


def fit_rolloff(ir, noise, rate, upper, models):
    total, cut = rolloff_bands(ir, rate)
    own = rolloff_bands(noise, rate)[0]
    decay, seconds = decay_of(cut, rate), len(cut) / rate
    used = HZ <= upper
    power, own = (total - own)[used], own[used]
    found = posterior(power, own, used, decay, seconds, models, 1)
    if np.min(power / own) < 100:
        posterior(power, own, used, decay, seconds, models, 0.03)
    return found


def posterior(power, own, used, decay, seconds, models, share):
    bands, curve, corners, prior = models
    n = used.sum()
    mean = averaging(n)
    top = slice(max(n - 18, 0), n)
    reference = np.exp(np.mean(np.log(np.maximum(np.maximum(power, own), 1e-12)[top])))
    power, own = power / reference, own / reference
    level, floor = np.maximum(mean @ power, 0), 1e-3 + share * (mean @ own)
    lines = np.maximum(1, HZ[used] * (2 ** (1 / 24) - 2 ** (-1 / 24)) * (seconds - 0.25))
    f, x, s = HZ[used], OCTAVE[used], SPREAD[used]
    dx = x[:, None] - x[None, :]
    c = np.outer(s, s) * (0.9 * np.exp(-(f[:, None] - f[None, :]) ** 2
                                       / (36 + 0.0025 * np.outer(f, f)))
                          + 0.1 * np.exp(-np.abs(dx)))
    c += np.exp(-0.5 * (dx / 0.5) ** 2) + 0.25 * np.eye(n) + 400 + 0.16 * np.outer(x, x)
    c += 0.25 * np.outer(GAIN[used], GAIN[used])
    c = mean @ c @ mean.T + np.diag(0.2 + 0.15 * s ** 2)
    heard = np.maximum(power, 0)
    variance = (2 * heard * own + own ** 2) / lines + own ** 2 / (3 * lines)
    spread = mean @ np.diag(variance) @ mean.T / np.outer(level + floor, level + floor)
    c += (10 / np.log(10)) ** 2 * spread
    livelier = np.clip(np.log2(decay / 0.35), -2, 2)
    room = 0.6 * GAIN[used] - livelier * LIVELY[used]
    residual = (10 * np.log10(level + floor) - room)[None, :] - 10 * np.log10(
        bands[:, used] @ mean.T + floor[None, :])
    white = linalg.solve_triangular(linalg.cholesky(c, lower=True), residual.T, lower=True)
    outside = corners[:, 0] > min(200, 0.7 * f[-1])
    log = np.where(outside, -np.inf, prior) - 0.5 * np.sum(white ** 2, axis=0)
    weights = np.exp(log - log.max())
    weights /= weights.sum()
    found = [quantiles(corners[:, k], weights, [0.05, 0.5, 0.8, 0.95]) for k in range(3)]
    kept = weights > 1e-9
    return found, [quantiles(column, weights[kept], [0.05, 0.5, 0.95]) for column in curve[kept].T]


# --- the whole -----------------------------------------------------------------------------------

def read(take, capture):
    rate = take["sampleRate"]
    inverses.clear()
    clocked = time.perf_counter()
    x = capture.astype(float)
    clock, at = estimate_clock(x, take)
    responded = time.perf_counter()
    noises, irs = {}, []
    for index, segment in enumerate(take["segments"]):
        key = json.dumps(segment["sweep"])
        if key not in noises:
            noises[key] = noise_response(x, take, clock, at, index)
        irs.append((segment, segment_response(x, take, clock, at, index), noises[key]))
    read_from = time.perf_counter()
    models, channels = grid(), []
    for segment, ir, noise in irs:
        sub = segment["channel"].startswith("Sub")
        arrival = find_arrival(ir, rate, sub)
        read_polarity(ir, rate, arrival)
        corners, _ = fit_rolloff(ir, noise, rate, 90 if sub else 500, models)
        smoothed(ir, rate), smoothed(noise, rate), envelope_curve(ir, rate, arrival)
        channels.append({"channel": segment["channel"], "arrivalSamples": float(arrival),
                         "levelDb": float(pink_level(ir, rate, *((30, 80) if sub else (500, 2000)))),
                         "f6Hz": float(corners[1][1])})
    done = time.perf_counter()
    seconds = {"clock": responded - clocked, "responses": read_from - responded,
               "channels": done - read_from, "total": done - clocked}
    return seconds, {"skewPpm": (clock - 1) * 1e6, "channels": channels}


if __name__ == "__main__":
    folder, runs = sys.argv[1], int(sys.argv[2])
    with open(os.path.join(folder, "take.json")) as file:
        the_take = json.load(file)
    the_capture = np.fromfile(os.path.join(folder, "capture.f32"), dtype=np.float32)
    results = [read(the_take, the_capture) for _ in range(runs)]
    json.dump({"runs": [seconds for seconds, _ in results], "reading": results[-1][1]}, sys.stdout)
