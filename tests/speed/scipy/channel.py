"""Everything of one channel: arrival, polarity, level, roll-off, curves, decay, bass, harmonics."""
import functools
import time

import numpy as np
from scipy import fft, ndimage

import beside
import harmonics
import responses
import rolloff
from arrival import ceiling_path, find_arrival
from level import read_level
from shared import analytic, band_means, decibels, integral, power_spectrum, spectrum


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


def curve(power, spacing, top):
    hz = 12 * 2 ** (np.arange(int(24 * np.log2(top / 12)) + 1) / 24)
    return decibels(band_means(power, spacing, hz * 2 ** (-1 / 48), hz * 2 ** (1 / 48)))


def played_band(power, spacing, is_sub):
    hz = 1000 * 2 ** ((np.arange(31) - 18) / 3)
    bands = band_means(power, spacing, hz * 2 ** (-1 / 6), hz * 2 ** (1 / 6))
    low, high = (40, 80) if is_sub else (500, 2000)
    loud = bands >= 0.01 * bands[(hz >= low) & (hz <= high)].mean()
    return hz[loud][[0, -1]]


def margins(power, noise, spacing, is_sub):
    mids = 1000 * 2.0 ** np.arange(-6 if is_sub else -5, -2 if is_sub else 5)
    heard, hiss = (integral(p, spacing) for p in (power, noise))
    own = hiss(mids * 2 ** 0.5) - hiss(mids / 2 ** 0.5)
    return decibels((heard(mids * 2 ** 0.5) - heard(mids / 2 ** 0.5) - own) / own)


def envelope(ir, rate, origin):
    edges = np.ceil(origin + (-0.003 + 0.00005 * np.arange(461)) * rate).astype(int)
    level = np.maximum.reduceat(np.abs(ir), np.clip(edges, 0, len(ir) - 1))[:460]
    return level / level.max()


def low_part(bins, size, hz, rate):
    """The signal of a half spectrum below `hz`, at four times that rate or more."""
    small = fft.next_fast_len(int(4 * hz * size / rate), real=True)
    f = np.arange(small // 2 + 1) * rate / size
    gain = 0.5 * (1 + np.cos(np.pi * np.clip((f / hz - 1) / 0.4, 0, 1)))
    return fft.irfft(gain * bins[:len(f)], small) * small / size, rate * small / size


def decay_seconds(x, hiss, rate, zero, block):
    """When the blocks have fallen by 45 dB or into the noise."""
    count = max(1, round(block * rate))
    mean = lambda y: np.mean(np.square(y[:len(y) // count * count].reshape(-1, count)), axis=1)
    powers, own = mean(x[zero:]), np.mean(mean(hiss[zero:]))
    above = np.flatnonzero(powers > max(powers.max() * 10 ** -4.5, 4 * own))
    return (above[-1] + 1) * block if len(above) and above[-1] < len(powers) - 2 else None


def bass_transfer(bins, size, rate, zero):
    """H on 48 frequencies per octave from 15 to 480 Hz, from an eight times finer spectrum."""
    slow, slow_rate = low_part(bins, size, 700, rate)
    hz = 15 * 2 ** (np.arange(241) / 48)
    long = 8 * len(slow)
    fine = fft.rfft(slow, long)[:int(500 / slow_rate * long)]
    turned = fine * np.exp(2j * np.pi * np.arange(len(fine)) * slow_rate / long * zero / rate)
    at = [hz / slow_rate * long]
    return (ndimage.map_coordinates(turned.real, at, order=3)
            + 1j * ndimage.map_coordinates(turned.imag, at, order=3))


class Take:
    """What all channels of a take share; noise per sweep is made when first asked for."""

    def __init__(self, x, take, ratio, at):
        self.x, self.take, self.ratio, self.at = x, take, ratio, at
        self.rate = take["sampleRate"] * ratio
        self.silence = responses.silence_of(x, take, ratio, at)
        self.floors = functools.cache(lambda: beside.floors_of(self.silence, self.rate))
        self.kept = {}

    def noise(self, segment):
        key = segment["sweep"]["endHz"]
        if key not in self.kept:
            ir = responses.noise_response(self.silence, segment, self.take["sampleRate"], self.ratio)
            bins, spacing = spectrum(ir, self.rate)
            self.kept[key] = (ir, np.square(np.abs(bins)), bins,
                              harmonics.noise_twice(ir, self.rate))
        return self.kept[key]


def read_channel(whole, index):
    """Reads one segment; seconds of a core per step beside it."""
    took, last = {}, [time.process_time()]

    def step(name):
        now = time.process_time()
        took[name] = took.get(name, 0) + now - last[0]
        last[0] = now

    take, segment = whole.take, whole.take["segments"][index]
    rate, sweep, is_sub = whole.rate, segment["sweep"], segment["channel"].startswith("Sub")
    ir, long, heard, pre, before = responses.respond(whole.x, take, whole.ratio, whole.at, index)
    hiss, hiss_power, hiss_bins, twice = whole.noise(segment)
    step("responses")
    bins, spacing = spectrum(ir, rate)
    power, size = np.square(np.abs(bins)), round(rate / spacing)
    played = played_band(power, spacing, is_sub)
    errors = beside.sound_beside(heard, pre, sweep, ir, pre, rate, whole.floors(), played)
    step("other sound")
    harmonics.read_harmonics(long, before, sweep, rate, twice)
    step("distortion")
    corners, _ = rolloff.fit_rolloff(ir, hiss, rate, is_sub)
    step("roll-off")
    found = find_arrival(ir, rate)
    arrival, ceiling = found["at"], ceiling_path(found, rate, segment["channel"].startswith("Tp"))
    read_polarity(ir, rate, arrival)
    level, level_halves = read_level(power, hiss_power, spacing, is_sub, ir, hiss, rate,
                                     len(whole.silence) / rate)
    top = 480 if is_sub else 20000
    curve(power, spacing, top), curve(hiss_power, spacing, top), envelope(ir, rate, arrival)
    margins(power, hiss_power, spacing, is_sub)
    decay_seconds(ir, hiss, rate, pre, 0.01)
    slow, slow_rate = low_part(bins, size, 160, rate)
    slow_hiss, _ = low_part(hiss_bins, size, 160, rate)
    decay_seconds(slow, slow_hiss, slow_rate, round(pre / rate * slow_rate), 3 / 160)
    bass_transfer(bins, size, rate, pre)
    step("the rest")
    return took, {"channel": segment["channel"], "arrivalSamples": float(arrival),
                  "halfSamples": float(found["half"]),
                  "ceilingSamples": None if ceiling is None else float(ceiling),
                  "levelDb": float(level), "levelHalves": [float(half) for half in level_halves],
                  "f6Hz": float(corners[1][1]), "errorsDb": errors}
