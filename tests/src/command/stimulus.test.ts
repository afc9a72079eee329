import { existsSync, mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { stimulusCommand } from '../../../src/command/stimulus';
import { parseSchedule } from '../../../src/schema/parse-schedule';
import { isTrouble } from '../../../src/trouble';
import { readWav } from '../../../src/wav/read-wav';
import { commandLine, freshDirectory } from './command-line';

const short = ['--sweep-seconds', '0.5'];

describe('leadline stimulus', () => {
  it('writes the take and its schedule, whose channels are in the order of the WAV', async () => {
    const directory = freshDirectory();
    const { code, out } = await stimulus(
      directory,
      '--layout',
      '5.1',
      '--out',
      'new/take',
      ...short,
    );
    expect(code).toBe(0);
    const channels = ['FL', 'FR', 'FC', 'Sub 1', 'SiL', 'SiR'];
    expect(JSON.parse(out)).toMatchObject({
      layout: '5.1',
      channels,
      sampleRate: 48000,
      depth: 24,
    });
    const text = readFileSync(join(directory, 'new/take/take.json'), 'utf8');
    expect(JSON.parse(text).channels).toEqual(channels);
    const schedule = parseSchedule(text);
    if (isTrouble(schedule)) return expect.fail(schedule.sentence);
    const wav = readWav(readFileSync(join(directory, 'new/take/take.wav')));
    if (isTrouble(wav)) return expect.fail(wav.sentence);
    expect(wav).toMatchObject({ bits: 24, channelMask: 0x60f, frames: schedule.lengthSamples });
    for (const [index, samples] of wav.channels.entries()) {
      const sweep = schedule.segments.find(({ channel }) => channel === channels[index]);
      const start = sweep?.sweepStart ?? 0;
      const middle = samples.subarray(start, start + (sweep?.sweep.lengthSamples ?? 0));
      expect(middle.reduce((peak, value) => Math.max(peak, value), 0)).toBeCloseTo(
        10 ** (-12 / 20),
        2,
      );
    }
    expect(readdirSync(join(directory, 'new/take')).sort()).toEqual(['take.json', 'take.wav']);
  });

  it('sweeps every speaker as often as asked, with pauses, and lets sweeps overlap', async () => {
    const save = async (...options: string[]) => {
      const directory = freshDirectory();
      await stimulus(directory, '--layout', '2.1', '--out', '.', ...short, ...options);
      const schedule = parseSchedule(readFileSync(join(directory, 'take.json'), 'utf8'));
      return isTrouble(schedule) ? expect.fail(schedule.sentence) : schedule;
    };
    const plain = await save();
    expect(plain).toMatchObject({ version: 2 });
    const twice = await save('--averages', '2', '--pause', '1');
    expect(twice.segments.map(({ channel }) => channel)).toEqual([
      ...['FL', 'FR', 'Sub 1'],
      ...['FL', 'FR', 'Sub 1'],
    ]);
    const grown = (twice.lengthSamples - plain.lengthSamples) / 48000;
    expect(grown).toBeGreaterThan(3 * 1.5 + 6);
    const over = await save('--overlap', '0.3');
    expect(over.markStarts).toHaveLength(plain.markStarts.length - 1);
    expect(over.lengthSamples).toBeLessThan(plain.lengthSamples);
  });

  it('refuses averages, pauses and overlaps that make no sense', async () => {
    for (const option of ['--averages=1.5', '--averages=9', '--pause=-1', '--overlap=0']) {
      const directory = freshDirectory();
      const [name = '', value = ''] = option.split('=');
      const options = ['--layout', '2.1', '--out', '.', ...short, name, value];
      const { code, err } = await stimulus(directory, ...options);
      expect(code).not.toBe(0);
      expect(err).toContain(name);
    }
  });

  it('takes rate, depth and peak', async () => {
    const directory = freshDirectory();
    const options = ['--rate', '96000', '--depth', 'float', '--peak', '-20'];
    await stimulus(directory, '--layout', '2.0', '--out', '.', ...short, ...options);
    const wav = readWav(readFileSync(join(directory, 'take.wav')));
    if (isTrouble(wav)) return expect.fail(wav.sentence);
    expect(wav).toMatchObject({ sampleRate: 96000, coding: 'float', bits: 32 });
    const peak = wav.channels[0]?.reduce((most, value) => Math.max(most, value), 0);
    expect(peak).toBeCloseTo(0.1, 2);
  });

  it.each<[string, string[], RegExp]>([
    ['a layout that means nothing', ['--layout', 'stereo'], /“stereo” names no layout/],
    ['a rate no player takes', ['--layout', '5.1', '--rate', '50000'], /--rate must be one of/],
    [
      'an unknown depth',
      ['--layout', '5.1', '--depth', '20'],
      /--depth must be 16, 24, 32 or float/,
    ],
    ['a sweep without end', ['--layout', '5.1', '--sweep-seconds', '99'], /from 0\.5 to 30 s/],
    ['a peak above full scale', ['--layout', '5.1', '--peak', '1'], /from -60 to 0 dB/],
    [
      'a take too large for a WAV',
      ['--layout', '9.4.6', '--rate', '192000', '--depth', '32', '--sweep-seconds', '30'],
      /would fill 8\.\d GiB, and a WAV holds 4/,
    ],
  ])('refuses %s and writes nothing', async (_what, args, finding) => {
    const directory = freshDirectory();
    const { code, out, err } = await stimulus(directory, '--out', 'take', ...args);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
    expect(readdirSync(directory)).toEqual([]);
  });

  it('leaves an earlier take as it was when it is stopped half-way', async () => {
    const directory = freshDirectory();
    writeFileSync(join(directory, 'take.wav'), 'earlier sound');
    writeFileSync(join(directory, 'take.json'), 'earlier take');
    const args = ['stimulus', '--layout', '2.0', '--out', '.', ...short];
    const { code, out, err } = await commandLine([stimulusCommand], directory, args, stopsAfter(3));
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(/stopped/);
    expect(readFileSync(join(directory, 'take.wav'), 'utf8')).toBe('earlier sound');
    expect(readFileSync(join(directory, 'take.json'), 'utf8')).toBe('earlier take');
    expect(readdirSync(directory)).toHaveLength(2);
  });

  it('says so when a file stands where the directory should be', async () => {
    const directory = freshDirectory();
    writeFileSync(join(directory, 'take'), 'a note');
    const { code, err } = await stimulus(directory, '--layout', '2.0', '--out', 'take', ...short);
    expect(code).toBe(1);
    expect(err).toMatch(/cannot be written into take: a file stands where/);
    expect(readFileSync(join(directory, 'take'), 'utf8')).toBe('a note');
  });

  it('leaves no part behind when a name is taken by a directory', async () => {
    const directory = freshDirectory();
    mkdirSync(join(directory, 'take.wav', 'inside'), { recursive: true });
    const { code, err } = await stimulus(directory, '--layout', '2.0', '--out', '.', ...short);
    expect(code).toBe(1);
    expect(err).toMatch(/cannot be written/);
    expect(existsSync(join(directory, 'take.json'))).toBe(false);
    expect(readdirSync(directory)).toEqual(['take.wav']);
  });
});

function stimulus(directory: string, ...args: string[]) {
  return commandLine([stimulusCommand], directory, ['stimulus', ...args]);
}

/** A signal that is aborted once it has been looked at so many times. */
function stopsAfter(looks: number): AbortSignal {
  const abort = new AbortController();
  const { signal } = abort;
  const throwIfAborted = signal.throwIfAborted.bind(signal);
  signal.throwIfAborted = () => {
    if (--looks < 0) abort.abort();
    throwIfAborted();
  };
  return signal;
}
