"""Finds the marks of a take and the clock of the capture, and checks the capture."""
import numpy as np
from scipy import fft, ndimage, signal, stats

from shared import faded


def chirp(mark, rate):
    t = np.arange(mark["lengthSamples"]) / rate
    x = signal.chirp(t, mark["startHz"], mark["lengthSamples"] / rate, mark["endHz"], phi=-90)
    return faded(x, mark["fadeSamples"], mark["fadeSamples"])


def normalised_match(x, energy, template):
    """Squared normalised correlation of the template with x from each sample on."""
    match = np.square(signal.oaconvolve(x, template[::-1], mode="valid"))
    sums = energy[len(template):] - energy[:-len(template)]
    return match / ((sums + 1e-9 * sums.max()) * np.dot(template, template))


def find_marks(x, take):
    rate, mark, starts = take["sampleRate"], take["mark"], np.array(take["markStarts"])
    taps = signal.firwin(511, [0.8 * mark["startHz"], 1.05 * mark["endHz"]], fs=rate,
                         pass_zero=False)
    x = signal.oaconvolve(x, taps, mode="same")
    energy = np.concatenate([[0], np.cumsum(np.square(x))])
    bare = normalised_match(x, energy, chirp(mark, rate))
    peaks, found = signal.find_peaks(bare, height=0.02, distance=int(0.2 * rate))
    seed = peaks[np.argmax(found["peak_heights"])]
    width = int((0.03 + 0.035) * rate)
    match = normalised_match(x, energy, x[seed:seed + width])
    peaks, found = signal.find_peaks(match, height=0.12, distance=int(0.2 * rate))
    offsets = peaks[:, None] - starts[None, :]
    votes = np.abs(offsets.ravel()[:, None] - offsets.ravel()[None, :]) < 600e-6 * len(x) + 24
    offset = offsets.ravel()[votes.sum(1).argmax()]
    coarse = np.array([peaks[np.abs(peaks - s - offset).argmin()] for s in starts])
    strong = peaks[found["peak_heights"] > 0.25]
    far = np.abs(strong[:, None] - coarse[None, :]).min(1) > 0.2 * rate
    return *refine_marks(x, coarse, width, mark, rate), strong[far]


def refine_marks(x, coarse, width, mark, rate, rounds=4):
    """
    Aligns the received marks with their own mean; positions by interpolated correlation, what noise
    does to them, and gains. A mark is template and rest.
    """
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
    aligned = fft.irfft(spectra * np.exp(turn[None, :] * shift[:, None]), size)[:, :width]
    mean = fft.irfft(template, size)[:width]
    share = 2 * (mark["endHz"] - mark["startHz"]) / rate
    product, own, energy = aligned @ mean, np.sum(np.square(aligned), axis=1), np.dot(mean, mean)
    gain, scale = product / energy, len(coarse) / (len(coarse) - 1)
    rest = np.maximum(own - gain * product, 1e-12 * own)
    slope = np.sum(np.square(np.diff(mean)))
    deviation = np.sqrt(scale * rest / (width * share * slope)) / np.abs(gain)
    match = product / np.sqrt(own * energy)
    sigma = np.hypot(20 / np.log(10) * np.sqrt(rest / (gain * product) / (width * share)), 0.01)
    gains = {"db": 20 * np.log10(np.abs(gain) / np.median(np.abs(gain))), "sigmaDb": sigma,
             "disturbed": rest > 4 * np.median(rest)}
    return coarse + shift, deviation, match, gains


def fit_clock(at, due, deviation):
    """
    Theil and Sen's slope, then weighted least squares over the marks that agree, each run between
    steps with an offset of its own; half the 90 % interval of the slope.
    """
    left = at - due * stats.theilslopes(at, due)[0]
    agrees = np.abs(np.diff(left)) < 3
    run = np.concatenate([[0], np.cumsum(~agrees)])
    weight = 1 / np.square(np.hypot(np.minimum(deviation, 100), 0.004))
    total = np.bincount(run, weight)
    centred = lambda v: v - (np.bincount(run, weight * v) / total)[run]
    x, y = centred(due), centred(at - due)
    slope = np.dot(weight * x, y) / np.dot(weight * x, x)
    freedom = max(0, len(at) - len(total) - 1)
    misfit = np.dot(weight, np.square(y - slope * x))
    spread = np.sqrt((4 + misfit) / (4 + freedom) / np.dot(weight * x, x))
    return slope, spread * stats.t.ppf(0.95, 4 + freedom), agrees


def judge_take(at, due, agrees, strays, mark, count):
    """Refuses what is another take by its spacings or strays, at another rate, or cut off."""
    inside = (strays > at[0] - due[0]) & (strays < at[-1] + 1.2 * np.mean(np.diff(due)))
    odds = 1 + 1.1 * np.sum(agrees) - np.sum(~agrees)
    if inside.any() or odds < 0:
        raise ValueError("the capture holds another take")
    if at[0] < 0 or at[-1] + mark["lengthSamples"] > count:
        raise ValueError("the take is cut off")


def estimate_clock(x, take):
    """Ratio of the clocks and its interval, where each mark stands, samples lost, gains of marks."""
    starts = np.array(take["markStarts"])
    at, deviation, match, gains, strays = find_marks(x, take)
    slope, half, agrees = fit_clock(at, starts, deviation)
    judge_take(at, starts, agrees, strays, take["mark"], len(x))
    if np.abs(slope) > 500e-6:
        raise ValueError("the capture is at another rate")
    lost = np.diff(at - starts * (1 + slope), prepend=(at - starts * (1 + slope))[0])
    clock = {"half": half, "lost": np.where(np.abs(lost) > 2, lost, 0), "match": float(match.mean())}
    return 1 + slope, at, clock, gains


def gain_faults(take, gains):
    """Segments whose opening mark has another gain than the reference's or the mark after it."""
    db, sigma = gains["db"], gains["sigmaDb"]
    differs = lambda a, b: np.abs(db[a] - db[b]) > np.maximum(0.25, 4 * np.hypot(sigma[a], sigma[b]))
    own = next(k for k, s in enumerate(take["segments"]) if s["channel"] == take["reference"])
    first = np.arange(len(take["segments"]))
    sure = ~(gains["disturbed"][first] | gains["disturbed"][first + 1])
    return sure & (differs(first, first + 1) | differs(first, own))


def check_segment(x, start, end):
    """Runs of zeros of 120 samples, and flat tops of three equal samples at the largest value."""
    piece = x[start:end]
    edges = np.flatnonzero(np.diff(np.concatenate([[0], piece == 0, [0]]).astype(np.int8)))
    gaps = int(np.sum(edges[1::2] - edges[::2] >= 120))
    flat = 0
    for side in (piece, -piece):
        top = side >= side.max() - 1e-7
        flat += int(np.sum(ndimage.minimum_filter1d(top.astype(np.int8), 3)))
    return gaps, flat >= 3


def check_capture(x, take, ratio, at):
    """Finite, peak, noise of the silence, gaps and clipping per segment."""
    if not np.all(np.isfinite(x)):
        raise ValueError("the capture holds what is no number")
    rate, silence = take["sampleRate"], take["silence"]
    first = at[0] - take["markStarts"][0] * ratio
    quiet = x[max(0, int(first + (silence["start"] + 0.02 * rate) * ratio)):
              int(first + (silence["start"] + silence["length"] - 0.02 * rate) * ratio)]
    checks = [check_segment(x, int(mark + (s["sweepStart"] - s["markStart"]) * ratio),
                            int(mark + (s["end"] - s["markStart"]) * ratio))
              for mark, s in zip(at, take["segments"])]
    f, floor = signal.welch(quiet, rate, "blackmanharris", 16384)
    edges = 1000 * 2.0 ** (np.arange(-5, 5) - 0.5)
    octaves = [floor[(f >= low) & (f < 2 * low)].sum() for low in edges]
    return {"noise": float(np.std(quiet)), "peak": float(np.abs(x).max()), "checks": checks,
            "octaves": octaves}
