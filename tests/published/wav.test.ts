import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { isTrouble } from '../../src/trouble';
import { readWav } from '../../src/wav/read-wav';
import { wavHeader } from '../../src/wav/wav-header';
import { writeWav } from '../../src/wav/write-wav';
import { expectClose } from '../close';
import vectors from './wav.vectors.json';

const python = spawnSync('python3', ['-c', 'import scipy.io.wavfile']).status === 0;

describe('WAV files of other programs', () => {
  // Source: SciPy's and Python's own writers; wav.vectors.py makes wav.vectors.json.
  it.each(vectors.files)('reads $name as SciPy does', ({ base64, sampleRate, channels }) => {
    const wav = readWav(new Uint8Array(Buffer.from(base64, 'base64')));
    if (isTrouble(wav)) return expect.fail(wav.sentence);
    expect(wav.sampleRate).toBe(sampleRate);
    expectClose(wav.channels, channels, 2 ** -24, 'half a step of a 32-bit float');
  });
});

describe('WAVE_FORMAT_EXTENSIBLE', () => {
  it('writes the header of a six-channel 24-bit file byte for byte', () => {
    // Field order and sizes: vendor documentation of WAVEFORMATEXTENSIBLE and KSDATAFORMAT_SUBTYPE_PCM
    // {00000001-0000-0010-8000-00aa00389b71}, from memory; mask 60Fh for 5.1 with sides, as documented.
    const header = wavHeader({
      channelCount: 6,
      frames: 1000,
      sampleRate: 48000,
      depth: 24,
      channelMask: 0x60f,
    });
    expect(Buffer.from(header).toString('hex')).toBe(
      [
        '52494646 98460000 57415645',
        '666d7420 28000000 feff 0600 80bb0000 002f0d00 1200 1800',
        '1600 1800 0f060000 0100000000001000800000aa00389b71',
        '66616374 04000000 e8030000',
        '64617461 50460000',
      ]
        .join('')
        .replaceAll(' ', ''),
    );
  });

  it.runIf(python).each([16, 24, 32, 'float'] as const)(
    'is read back by SciPy at depth %s',
    (depth) => {
      const channels = [Float32Array.of(0.5, -0.25, 0), Float32Array.of(-1, 0.125, 0.75)];
      const bytes = writeWav({ channels, sampleRate: 48000, depth, channelMask: 3 });
      const script = [
        'import io, json, sys',
        'from scipy.io import wavfile',
        'rate, data = wavfile.read(io.BytesIO(sys.stdin.buffer.read()))',
        'print(json.dumps([rate, data.T.astype(float).tolist()]))',
      ].join('\n');
      const run = spawnSync('python3', ['-W', 'ignore', '-c', script], { input: bytes });
      const full = { 16: 2 ** 15, 24: 2 ** 31, 32: 2 ** 31, float: 1 }[depth];
      const expected = channels.map((samples) => [...samples].map((value) => value * full));
      expect(run.stderr.toString()).toBe('');
      expect(JSON.parse(run.stdout.toString())).toEqual([48000, expected]);
    },
  );
});
