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
    levels = 20 * np.log10(np.abs(spectra @ np.conj(template)) / np.vdot(template, template).real)
    return coarse + shift, levels - np.median(levels)


def estimate_clock(x, take):
    """Ratio of the clocks, where each mark stands, samples lost before each, and mark levels."""
    starts, (at, levels) = np.array(take["markStarts"]), find_marks(x, take)
    slope = stats.theilslopes(at, starts)[0]
    left = at - starts * slope
    good = np.abs(left - np.median(left)) < 3
    ratio = stats.linregress(starts[good], at[good]).slope
    lost = np.diff(at - starts * ratio, prepend=(at - starts * ratio)[0])
    return ratio, at, np.where(np.abs(lost) > 2, lost, 0), levels


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
