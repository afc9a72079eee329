import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { responseToWav } from '../../../src/inspect/response-to-wav';
import { isTrouble } from '../../../src/trouble';
import { readWav } from '../../../src/wav/read-wav';
import { riffChunks } from '../../../src/wav/riff-chunks';

const normal = gaussian(seededRandom(91));
const ir = {
  samples: Float64Array.from({ length: 701 }, (_, n) => 3 * normal() * Math.exp(-n / 90)),
  sampleRate: 47_999.6,
  zeroIndex: 120,
};
const facts = { layout: '5.1', speaker: 'FL', position: 'Seat 1', takenAt: '2026-03-01T09:05:00Z' };
const floats = Float32Array.from(ir.samples);
const { name, bytes } = responseToWav(ir, facts);

describe('responseToWav', () => {
  it('is read back as it was, in 32-bit floats', () => {
    const wav = readWav(bytes);
    if (isTrouble(wav)) return expect.fail(wav.sentence);
    expect(wav).toMatchObject({ sampleRate: 48_000, coding: 'float', bits: 32, frames: 701 });
    expect(wav.channels).toEqual([floats]);
  });

  it('tells where zero delay is, in its name and by a cue point', () => {
    expect(name).toBe(
      '5.1 FL Seat 1 2026-03-01 09-05 impulse response zero delay at sample 120.wav',
    );
    const view = new DataView(bytes.buffer);
    const chunks = [...riffChunks(view)];
    expect(chunks.map(({ id }) => id)).toEqual(['fmt ', 'fact', 'data', 'cue ']);
    const cue = chunks.at(-1);
    if (!cue) return expect.fail('no cue chunk');
    // One point: number, position, 'data', chunk start, block start, sample offset.
    const words = Array.from({ length: 7 }, (_, n) => view.getUint32(cue.start + 4 * n, true));
    expect(words).toEqual([1, 1, 120, 0x61746164, 0, 0, 120]);
    expect(cue.start + cue.size).toBe(bytes.length);
    expect(view.getUint32(4, true)).toBe(bytes.length - 8);
  });

  const python = spawnSync('python3', ['-c', 'import scipy.io.wavfile']).status === 0;

  it.runIf(python)('is read back by SciPy', () => {
    const script = [
      'import io, json, sys',
      'from scipy.io import wavfile',
      'rate, data = wavfile.read(io.BytesIO(sys.stdin.buffer.read()))',
      'print(json.dumps([rate, str(data.dtype), data.astype(float).tolist()]))',
    ].join('\n');
    const run = spawnSync('python3', ['-W', 'ignore', '-c', script], { input: bytes });
    expect(run.stderr.toString()).toBe('');
    expect(JSON.parse(run.stdout.toString())).toEqual([48_000, 'float32', [...floats]]);
  });

  it('refuses responses that are none', () => {
    const empty = { ...ir, samples: new Float64Array(0), zeroIndex: 0 };
    expect(() => responseToWav(empty, facts)).toThrow(RangeError);
    expect(() => responseToWav({ ...ir, zeroIndex: 0.5 }, facts)).toThrow(RangeError);
    expect(() => responseToWav({ ...ir, zeroIndex: 701 }, facts)).toThrow(RangeError);
    const samples = ir.samples.map((value, n) => (n === 7 ? NaN : value));
    expect(() => responseToWav({ ...ir, samples }, facts)).toThrow(RangeError);
  });
});
