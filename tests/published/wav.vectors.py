"""Writes wav.vectors.json: small WAV files of SciPy and of Python's own wave module, and what
SciPy reads from them. Run: python3 tests/published/wav.vectors.py > tests/published/wav.vectors.json
"""
import base64, io, json, wave
import numpy as np
import scipy
from scipy.io import wavfile

rng = np.random.default_rng(11)
signal = np.round(rng.uniform(-1, 1, (17, 3)), 6)
files = []


def add(name, data):
    buffer = io.BytesIO()
    wavfile.write(buffer, 44100, data)
    keep(name, buffer.getvalue())


def keep(name, raw):
    rate, data = wavfile.read(io.BytesIO(raw))
    if data.ndim == 1:
        data = data[:, None]
    if data.dtype == np.uint8:
        values = (data.astype(float) - 128) / 128
    elif np.issubdtype(data.dtype, np.integer):
        values = data.astype(float) / -float(np.iinfo(data.dtype).min)
    else:
        values = data.astype(float)
    files.append({
        "name": name,
        "base64": base64.b64encode(raw).decode(),
        "sampleRate": rate,
        "channels": values.T.tolist(),
    })


add("8-bit, 3 channels", np.round(signal * 127 + 128).astype(np.uint8))
add("16-bit, 3 channels", np.round(signal * 32767).astype(np.int16))
add("32-bit, mono", np.round(signal[:, 0] * 2147483647).astype(np.int32))
add("32-bit float, 2 channels", signal[:, :2].astype(np.float32))
add("64-bit float, 3 channels", signal)

buffer = io.BytesIO()
with wave.open(buffer, "wb") as out:
    out.setnchannels(1)
    out.setsampwidth(3)
    out.setframerate(88200)
    for value in np.round(signal[:, 0] * 8388607).astype(int):
        out.writeframesraw(int(value).to_bytes(3, "little", signed=True))
keep("24-bit, mono, from Python's wave", buffer.getvalue())

print(json.dumps({"by": f"SciPy {scipy.__version__}, NumPy {np.__version__}", "files": files}, indent=1))
