"""What several readings need: windows, spectra, band means, analytic bands."""
import functools

import numpy as np
from scipy import fft


def rise(count):
    return np.sin(np.pi * (np.arange(count) + 0.5) / (2 * count)) ** 2


def faded(x, fade_in, fade_out):
    x[:fade_in] *= rise(fade_in)
    x[len(x) - fade_out:] *= rise(fade_out)[::-1]
    return x


def decibels(power):
    return 10 * np.log10(np.maximum(power, 1e-30))


def spectrum(x, rate, spacing=1.0):
    """Half spectrum zero-padded to bins at most `spacing` apart, and how far apart they are."""
    size = fft.next_fast_len(max(len(x), int(np.ceil(rate / spacing))), real=True)
    return fft.rfft(x, size), rate / size


def power_spectrum(x, rate, spacing=1.0):
    bins, apart = spectrum(x, rate, spacing)
    return np.square(bins.real) + np.square(bins.imag), apart


def integral(power, spacing):
    """Power from 0 to a frequency; a bin's power stands half a bin to each side."""
    sums = np.concatenate([[0], np.cumsum(power)]) - 0.5 * power[0]
    at = np.arange(len(sums))
    return lambda hz: np.interp(np.asarray(hz) / spacing + 0.5, at, sums) * spacing


def band_means(power, spacing, low, high):
    upto = integral(power, spacing)
    return (upto(high) - upto(low)) / (high - low)


@functools.lru_cache(maxsize=16)
def analytic_gain(size, rate, low, high):
    f = fft.rfftfreq(size, 1 / rate)
    with np.errstate(divide="ignore"):
        outside = np.maximum(np.maximum(np.log2(low / f), np.log2(f / high)), 0) / 0.35
    return 1 + np.cos(np.pi * np.minimum(outside, 1))


def analytic(x, rate, low, high):
    size = fft.next_fast_len(len(x) + int(4 * rate / low), real=True)
    half = fft.rfft(x, size) * analytic_gain(size, rate, low, high)
    whole = np.zeros(size, complex)
    whole[:len(half)] = half
    return fft.ifft(whole)[:len(x)]
