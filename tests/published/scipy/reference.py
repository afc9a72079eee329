"""The same numerical work done by SciPy, for dsp/fft, dsp/response, dsp/filter and
dsp/decay.

python3 reference.py vectors > reference.vectors.json   small cases, stored beside this file
python3 reference.py answer < cases.json                answers to cases given on standard input

A case is {"task": name, "input": {…}}; an answer is a list of numbers. Nothing here was written
from the project's code: sweeps come from scipy.signal.chirp, filters from scipy.signal.butter.
"""
import json
import sys

import numpy as np
import scipy
from scipy import fft, signal


def interleave(z):
    return np.column_stack([z.real, z.imag]).ravel()


def half_cosine(count):
    return np.sin(np.pi * (np.arange(count) + 0.5) / (2 * count)) ** 2


def sweep(spec):
    n = spec["lengthSamples"]
    t = np.arange(n) / spec["sampleRate"]
    x = signal.chirp(t, spec["startHz"], n / spec["sampleRate"], spec["endHz"],
                     method="logarithmic", phi=-90)
    x[:spec["fadeInSamples"]] *= half_cosine(spec["fadeInSamples"])
    x[n - spec["fadeOutSamples"]:] *= half_cosine(spec["fadeOutSamples"])[::-1]
    return x


def mark(spec):
    n = spec["lengthSamples"]
    t = np.arange(n) / spec["sampleRate"]
    x = signal.chirp(t, spec["startHz"], n / spec["sampleRate"], spec["endHz"], phi=-90)
    x[:spec["fadeSamples"]] *= half_cosine(spec["fadeSamples"])
    x[n - spec["fadeSamples"]:] *= half_cosine(spec["fadeSamples"])[::-1]
    return x


def skirt(f, zero, full):
    return np.sin(np.pi / 2 * np.clip((f - zero) / (full - zero), 0, 1)) ** 2


def deconvolve(captured, start, spec, pre, length):
    """Regularised division B Y X*/(|X|^2 + 1e-4 L fs^2/4f) at a size with room to spare."""
    captured = np.asarray(captured)
    used = length + spec["lengthSamples"]
    padded = np.concatenate([np.zeros(pre + used), captured, np.zeros(pre + used)])
    y = padded[start + used:start + 2 * used]
    size = 2 ** int(np.ceil(np.log2(used)))
    f = fft.rfftfreq(size, 1 / spec["sampleRate"])
    x = fft.rfft(sweep(spec), size)
    f1, f2 = spec["startHz"], spec["endHz"]
    rate = spec["lengthSamples"] / spec["sampleRate"] / np.log(f2 / f1)
    floor = 1e-4 * rate * spec["sampleRate"] ** 2 / 4 / np.clip(f, f1, f2)
    band = skirt(f, 0.2 * f1, 1.2 * f1) * skirt(f, f2, 0.92 * f2)
    h = band * fft.rfft(y, size) * np.conj(x) / (np.abs(x) ** 2 + floor)
    ir = fft.irfft(h, size)[:length]
    fade = round(0.002 * spec["sampleRate"])
    head, tail = min(fade, pre // 2), min(fade, (length - pre) // 2)
    ir[:head] *= half_cosine(head)
    ir[length - tail:] *= half_cosine(tail)[::-1]
    return ir


def butterworth(spec, rate, analog):
    half = spec["order"] // 2 if spec["family"] == "linkwitz-riley" else spec["order"]
    kind = spec["kind"].replace("-", "")
    if analog:
        one = signal.butter(half, 2 * np.pi * spec["cutoffHz"], kind, analog=True, output="zpk")
    else:
        one = signal.butter(half, spec["cutoffHz"], kind, fs=rate, output="sos")
    return one, 2 if spec["family"] == "linkwitz-riley" else 1


def smooth(power, hz_per_bin, hz, fraction):
    """Mean over [f 2^(-1/2b), f 2^(1/2b)], a bin's power standing half a bin to each side."""
    centre = np.arange(len(power)) * hz_per_bin
    top = centre[-1]
    out = []
    for f in hz:
        low, high = f * 2 ** (-0.5 / fraction), min(f * 2 ** (0.5 / fraction), top)
        share = np.clip(np.minimum(centre + hz_per_bin / 2, high)
                        - np.maximum(centre - hz_per_bin / 2, low), 0, None)
        out.append(np.dot(power, share) / (high - low))
    return np.array(out)


def pink_mean(power, hz_per_bin, low, high):
    """Integral of P(f)/f over log f, by adding up finely interpolated steps."""
    f = np.exp((np.arange(400_000) + 0.5) / 400_000 * np.log(high / low)) * low
    return np.array([np.mean(np.asarray(power)[np.floor(f / hz_per_bin + 0.5).astype(int)])])


def octave_edges(mid):
    return np.array([10 ** -0.15, 10 ** 0.15]) * mid


def octave_response(mid, hz):
    """Third-order Butterworth band-pass between the edges of an octave, base ten."""
    zpk = signal.butter(3, 2 * np.pi * octave_edges(mid), "bandpass", analog=True, output="zpk")
    return signal.freqs_zpk(*zpk, worN=2 * np.pi * np.array(hz))[1]


def octave_decay(x, rate, mid, start, end):
    """Backward integral of the octave, filtered backwards in time, at 400 moments."""
    sos = signal.butter(3, octave_edges(mid), "bandpass", fs=rate, output="sos")
    lead = len(x)
    padded = np.concatenate([np.zeros(lead), x, np.zeros(lead)])
    power = np.abs(signal.hilbert(signal.sosfilt(sos, padded[::-1])[::-1])) ** 2
    # The power of sample n stands from n - 1/2 to n + 1/2.
    edges = np.arange(len(power) + 1) - lead - 0.5
    sums = np.concatenate([[0], np.cumsum(power)])
    upto = np.interp(np.linspace(start, end, 401), edges, sums)
    return (upto[-1] - upto[:-1]) / (upto[-1] - np.interp(0, edges, sums))


def group_delay(spec, rate, hz):
    half = spec["order"] // 2 if spec["family"] == "linkwitz-riley" else spec["order"]
    times = 2 if spec["family"] == "linkwitz-riley" else 1
    b, a = signal.butter(half, spec["cutoffHz"], spec["kind"].replace("-", ""), fs=rate)
    return times * signal.group_delay((b, a), np.array(hz), fs=rate)[1] / rate


def answer(task, v):
    if task == "real spectrum":
        return interleave(fft.rfft(v["signal"], v["size"]))
    if task == "complex spectrum":
        z = np.array(v["signal"]).reshape(-1, 2) @ np.array([1, 1j])
        return interleave(fft.fft(z))
    if task == "convolution":
        return np.convolve(v["a"], v["b"])
    if task == "sweep":
        return sweep(v)
    if task == "mark":
        return mark(v)
    if task == "deconvolution":
        return deconvolve(v["captured"], v["startIndex"], v["sweep"], v["preSamples"],
                          v["lengthSamples"])
    if task == "analogue response":
        zpk, times = butterworth(v["filter"], None, True)
        return interleave(signal.freqs_zpk(*zpk, worN=2 * np.pi * np.array(v["hz"]))[1] ** times)
    if task == "digital response":
        sos, times = butterworth(v["filter"], v["sampleRate"], False)
        return interleave(signal.sosfreqz(sos, v["hz"], fs=v["sampleRate"])[1] ** times)
    if task == "filtering":
        sos, times = butterworth(v["filter"], v["sampleRate"], False)
        return signal.sosfilt(np.vstack([sos] * times), v["signal"])
    if task == "smoothing":
        return smooth(np.array(v["power"]), v["hzPerBin"], v["hz"], v["fraction"])
    if task == "pink mean":
        return pink_mean(v["power"], v["hzPerBin"], v["lowHz"], v["highHz"])
    if task == "octave response":
        return interleave(octave_response(v["midHz"], v["hz"]))
    if task == "octave decay":
        return octave_decay(np.array(v["signal"]), v["sampleRate"], v["midHz"], v["from"], v["to"])
    if task == "group delay":
        return group_delay(v["filter"], v["sampleRate"], v["hz"])
    raise ValueError(task)


def small_cases():
    rng = np.random.default_rng(7)

    def noise(count):
        return np.round(rng.standard_normal(count), 6).tolist()

    spec = {"startHz": 100.0, "endHz": 3500.0, "lengthSamples": 1500, "sampleRate": 8000,
            "fadeInSamples": 100, "fadeOutSamples": 30}
    room = np.exp(-np.arange(60) / 12) * rng.standard_normal(60)
    captured = np.round(np.convolve(sweep(spec), room), 9).tolist()
    yield "real spectrum", {"signal": noise(50), "size": 64}
    yield "complex spectrum", {"signal": noise(64)}
    yield "convolution", {"a": noise(13), "b": noise(40)}
    yield "sweep", {**spec, "lengthSamples": 400, "fadeInSamples": 40}
    yield "mark", {"startHz": 2000, "endHz": 12000, "lengthSamples": 240, "fadeSamples": 24,
                   "sampleRate": 48000}
    yield "deconvolution", {"captured": [0.0] * 200 + captured, "startIndex": 200, "sweep": spec,
                            "preSamples": 100, "lengthSamples": 400}
    hz = [1.0, 20.0, 63.0, 80.0, 100.0, 1000.0, 15000.0]
    for family, order in [("butterworth", 1), ("butterworth", 2), ("butterworth", 3),
                          ("butterworth", 8), ("linkwitz-riley", 2), ("linkwitz-riley", 4),
                          ("linkwitz-riley", 8)]:
        for kind in ["low-pass", "high-pass"]:
            f = {"family": family, "kind": kind, "order": order, "cutoffHz": 80.0}
            yield "analogue response", {"filter": f, "hz": hz}
            yield "digital response", {"filter": f, "hz": hz, "sampleRate": 48000}
    yield "filtering", {"filter": {"family": "linkwitz-riley", "kind": "high-pass", "order": 4,
                                   "cutoffHz": 900.0}, "sampleRate": 8000, "signal": noise(100)}
    power = np.round(rng.random(200), 6).tolist()
    yield "smoothing", {"power": power, "hzPerBin": 2.5, "fraction": 24,
                        "hz": [3.0, 20.0, 77.0, 301.0, 495.0]}
    yield "smoothing", {"power": power, "hzPerBin": 2.5, "fraction": 3, "hz": [20.0, 300.0, 400.0]}
    yield "pink mean", {"power": power, "hzPerBin": 2.5, "lowHz": 30.0, "highHz": 80.0}
    yield "octave response", {"midHz": 1000.0, "hz": [10.0, 300.0, 700.0, 1000.0, 1500.0, 20000.0]}
    yield "octave response", {"midHz": 10 ** 1.5, "hz": [5.0, 22.4, 30.0, 44.7, 100.0]}
    fall = np.exp(-np.arange(1500) / 300) * (np.arange(1500) >= 200)
    yield "octave decay", {"signal": np.round(fall * rng.standard_normal(1500), 6).tolist(),
                           "sampleRate": 48000, "midHz": 1000.0, "from": 200, "to": 1400}
    for kind, order, cutoff in [("low-pass", 2, 80.0), ("high-pass", 4, 500.0)]:
        f = {"family": "linkwitz-riley", "kind": kind, "order": order, "cutoffHz": cutoff}
        yield "group delay", {"filter": f, "hz": [100.0, 200.0, 1000.0, 3000.0], "sampleRate": 8192}


if __name__ == "__main__":
    if sys.argv[1] == "vectors":
        cases = [{"task": task, "input": v, "answer": answer(task, v).tolist()}
                 for task, v in small_cases()]
        json.dump({"madeWith": f"SciPy {scipy.__version__}", "cases": cases}, sys.stdout)
    else:
        json.dump([answer(c["task"], c["input"]).tolist() for c in json.load(sys.stdin)], sys.stdout)
