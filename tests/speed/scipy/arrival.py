"""First arrival of a speaker with its interval, by its sweep and by the marks of the take."""
import numpy as np
from scipy import fft, ndimage, signal

from clock import chirp
from shared import analytic, faded

STANDARD = (3000, 18000)
FACTOR = 8
# A crossover's delay counts less above this, Hz.
UPWARD = 6000


def fine_envelope(z, first, count):
    """|z| from `first` on, eight times finer; the outer 64 samples are faded."""
    piece = np.zeros(count, complex)
    inside = z[max(first, 0):first + count]
    piece[max(-first, 0):max(-first, 0) + len(inside)] = inside
    return np.abs(signal.resample(faded(piece, 64, 64), FACTOR * count))


def vertex(x, n):
    if not 0 < n < len(x) - 1:
        return n
    bend = x[n - 1] - 2 * x[n] + x[n + 1]
    return n + np.clip((x[n - 1] - x[n + 1]) / (2 * bend), -0.5, 0.5) if bend < 0 else n


def rms(x):
    return np.sqrt(np.mean(np.square(np.abs(x)))) if len(x) else 0


def noise_before(x, peak, rate, clear):
    end = peak - round(clear * rate)
    return x[max(0, end - round(0.1 * rate)):max(0, end)]


def quiet_stretches(x, peak, rate, clear):
    """What lies before a peak and the end of the response, each where there is room for it."""
    before = noise_before(x, peak, rate, clear)
    return [s for s in (before, x[-round(0.1 * rate):]) if len(s) >= 0.002 * rate]


def carried_width(envelope, top, rate, width):
    """Bandwidth that the rise of a peak from half its height shows."""
    under = np.flatnonzero(envelope[:top + 1] <= envelope[top] / 2)
    rise = (top - (under[-1] if len(under) else 0)) / rate
    return 0.54 / rise if rise * width > 1.5 * 0.54 else width


def look_upward(ir, rate, at, high, least):
    """The nearest maximum above 6 kHz within 0.1 ms."""
    if high <= 1.5 * UPWARD:
        return at
    half = round(0.012 * rate)
    first = max(0, round(at) - half)
    z = analytic(ir[first:round(at) + half], rate, UPWARD, high)
    start = round(at) - first - 200
    fine = fine_envelope(z, start, 400)
    middle, reach = round((at - first - start) * FACTOR), round(0.1e-3 * rate * FACTOR)
    peaks = signal.argrelmax(fine[middle - reach - 1:middle + reach + 2])[0] + middle - reach - 1
    places = [first + start + vertex(fine, n) / FACTOR for n in peaks if fine[n] >= least]
    return min(places, key=lambda place: abs(place - at), default=at)


def half_interval(carried, ratio, adapted, bass):
    hiss = 1.645 * np.sqrt(12) / (2 * np.pi * carried * max(1, ratio))
    share = np.clip(np.log(15000 / carried) / np.log(10), 0, 1)
    room = 0.7 / carried if adapted and not bass else 5e-6 ** (1 - share) * (0.35 / carried) ** share
    return np.hypot(room, hiss)


def read_band(ir, rate, band, adapted):
    width, bass = band[1] - band[0], band[1] < 1000
    scale = max(1, (STANDARD[1] - STANDARD[0]) / width)
    z = analytic(ir, rate, band[0], min(band[1], rate / 2))
    envelope = np.abs(z)
    coarse = int(envelope.argmax())
    search = 0.15 if bass else 0.015 * min(scale, 4)
    quiet = quiet_stretches(z, coarse, rate, search)
    if not quiet:
        return None
    levels = [rms(np.column_stack([s.real, s.imag])) for s in quiet]
    noise = max(min(levels) if adapted else levels[0], 1e-8 * envelope[coarse])
    around = round(0.002 * scale * rate)
    whole = np.abs(ir[max(0, coarse - around):coarse + around + 1]).max()
    top, loudest = envelope[coarse], np.abs(ir).argmax()
    if top < 10 * noise or top < whole * 10 ** -2.5:
        return None
    if not adapted and (top < np.abs(ir[loudest]) * 10 ** -2.5 or abs(coarse - loudest) > 0.1 * rate):
        return None
    before = round((search + 0.001 * scale) * rate)
    origin, factor = (0, 1) if bass else (coarse - before - 64, FACTOR)
    fine = envelope if bass else fine_envelope(z, origin, before + 64 + 160)
    middle = (coarse - origin) * factor
    strongest = int(fine[:middle + 2 * factor].argmax())
    peak, own_rate = fine[strongest], rate * factor
    least = max(peak * 0.1, noise * 10 ** 0.7)
    start = max(1, round(middle - search * own_rate))
    heard = width if bass else carried_width(fine, strongest, own_rate, width)
    if not adapted and heard < 0.2 * width:
        return None
    if bass:
        level = max(least, 0.3 * peak)
        first = start + int(np.argmax(fine[start:strongest + 1] >= level))
        if fine[first - 1] < level:
            first -= (fine[first] - level) / (fine[first] - fine[first - 1])
        at = origin + first / factor
    else:
        reach = round(0.5e-3 * scale * width / heard * own_rate)
        piece = fine[start:strongest + reach + 1]
        ahead = ndimage.maximum_filter1d(piece, reach + 1, origin=-(reach // 2), mode="constant")
        peaks = signal.argrelmax(fine[start - 1:strongest])[0] - 1
        good = peaks[(peaks >= 0) & (piece[peaks] >= least) & (piece[peaks] >= 0.35 * ahead[peaks])]
        first = start + int(good[0]) if len(good) else strongest
        at = origin + vertex(fine, first) / factor
        if not adapted and band[0] < band[1] / 2:
            at = look_upward(ir, rate, at, min(band[1], rate / 2), 10 * noise)
    level = fine[int(round(first))]
    carried = width if bass else carried_width(fine, first, own_rate, width)
    quiet = noise_before(ir, int(at) if bass else coarse, rate, 0.01 if bass else search)
    return {"at": at, "half": half_interval(carried, level / noise, adapted, bass) * rate,
            "strongest": origin + vertex(fine, strongest) / factor,
            "firstDb": 20 * np.log10(level / peak), "adapted": adapted,
            "margin": 20 * np.log10(whole / max(rms(quiet), 1e-8 * whole))}


def carried_band(ir, rate, loudest):
    """The uppermost third-octaves, an octave to 2.6, that stand over noise and near the strongest."""
    heard = ir[max(0, loudest - round(0.02 * rate)):loudest + round(0.2 * rate)]
    quiet = min(quiet_stretches(ir, loudest, rate, 0.015), key=rms, default=None)
    if quiet is None:
        return None
    size = fft.next_fast_len(max(len(heard), len(quiet)), real=True)
    edges = 20 * 2 ** (np.arange(int(np.ceil(3 * np.log2(0.45 * rate / 20)))) / 3)
    bins = np.maximum(1, np.floor(edges * size / rate)).astype(int)
    levels = []
    for x in (heard, quiet):
        edge = max(16, len(x) // 16)
        power = np.square(np.abs(fft.rfft(faded(x.copy(), edge, edge), size))) / len(x)
        levels.append(np.add.reduceat(power, bins)[:-1] / np.maximum(1, np.diff(bins)))
    good = (levels[0] >= 10 ** 1.5 * levels[1]) & (levels[0] >= levels[0].max() * 10 ** -2.5)
    runs = np.flatnonzero(np.diff(np.pad(good, 1).astype(np.int8))).reshape(-1, 2)
    runs = runs[runs[:, 1] - runs[:, 0] >= 3]
    return (edges[max(runs[-1, 0], runs[-1, 1] - 8)], edges[runs[-1, 1]]) if len(runs) else None


def find_arrival(ir, rate, band=STANDARD):
    """In the band asked for on what is near the largest sample, else in the uppermost one carried."""
    loudest = int(np.abs(ir).argmax())
    first, end = max(0, loudest - round(0.25 * rate)), min(len(ir), loudest + round(0.4 * rate))
    fade = round(0.02 * rate)
    near = faded(ir[first:end].copy(), fade if first > 0 else 0, fade if end < len(ir) else 0)
    found = read_band(near, rate, band, False)
    if found:
        return {**found, "at": found["at"] + first, "strongest": found["strongest"] + first}
    carried = carried_band(ir, rate, loudest)
    return read_band(ir, rate, carried, True) if carried else None


def ceiling_path(found, rate, is_height):
    """Where a height is heard over the ceiling: its strongest path, well above an early leak."""
    later = (found["strongest"] - found["at"]) / rate
    bounced = is_height and found["firstDb"] <= -4 and 0.6e-3 <= later <= 12e-3
    return found["strongest"] if bounced else None


def arrival_from_marks(x, take, ratio, at):
    """The reference speaker's arrival by the mean of all marks, divided by the chirp."""
    mark, rate = take["mark"], take["sampleRate"] * ratio
    before, count = round(0.1 * rate), round(0.1 * rate) + round(0.25 * rate)
    size = fft.next_fast_len(count + int(np.ceil(mark["lengthSamples"] * ratio)), real=True)
    first = np.floor(at).astype(int)
    rows = np.clip(first[:, None] - before + np.arange(count), 0, len(x) - 1)
    turns = np.exp(2j * np.pi * np.outer(at - first, np.arange(size // 2 + 1)) / size)
    mean = np.sum(fft.rfft(x[rows], size) * turns, axis=0)
    sent = fft.rfft(chirp(mark, rate), size)
    power = np.square(np.abs(sent))
    ir = fft.irfft(mean * np.conj(sent) / (power + 1e-2 * power.max()), size)[:count]
    return find_arrival(ir, rate, (1.3 * mark["startHz"], 0.95 * mark["endHz"]))
