import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { readCommand } from '../../../src/command/read';
import { closeMetres } from '../../../src/rig/practice-hold';
import { practiceRig } from '../../../src/rig/practice';
import { practiceTruth } from '../../../src/rig/practice-truth';
import { parseReadings } from '../../../src/schema/parse-readings';
import { layoutFromName } from '../../../src/system/layout';
import { planTake } from '../../../src/take/plan-take';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { writeWav } from '../../../src/wav/write-wav';
import { expectClose } from '../../close';
import { commandLine } from './command-line';

const layout = layoutFromName('3.1');
if (isTrouble(layout)) throw new RangeError(layout.sentence);
const schedule = scheduleTake(layout, { sweepSeconds: 1 });
const plan = planTake(
  layout,
  { sweepSeconds: 1, averages: 1, pauseSeconds: 0, overlap: false, repeats: 0 },
  null,
  { channels: ['FL'] },
);
if (isTrouble(plan) || !plan.parts[0]) throw new RangeError('FL must have a take of its own');
const closeBy = plan.parts[0].schedule;
const truth = practiceTruth(layout, 5);
const directory = mkdtempSync(join(tmpdir(), 'leadline-'));

beforeAll(async () => {
  const { signal } = new AbortController();
  const capture = await practiceRig({ layout, seed: 5 }).play(schedule, { signal });
  if (isTrouble(capture)) throw new Error(capture.sentence);
  const { samples } = capture;
  const normal = gaussian(seededRandom(9));
  const hiss = Float32Array.from(samples, () => 1e-3 * normal());
  saveWav('capture.wav', [samples]);
  saveWav('stereo.wav', [new Float32Array(samples.length), samples]);
  const near = { layout, seed: 5, hold: 'FL', holdMetres: closeMetres } as const;
  const held = await practiceRig(near).play(closeBy, { signal });
  if (isTrouble(held)) throw new Error(held.sentence);
  saveWav('close.wav', [held.samples]);
  save('close.json', JSON.stringify(closeBy));
  const wired = await practiceRig({ layout, seed: 5, loopback: true }).play(schedule, { signal });
  if (isTrouble(wired) || !wired.loopback) throw new Error('the room must have a loopback');
  saveWav('loopback.wav', [wired.samples, wired.loopback]);
  save('microphone.txt', '20 -3\n100 0\n1000 0\n10000 1\n20000 2\n');
  const settings = { format: 'leadline-in-force', version: 1, trimDb: { FL: 2, FC: -1.5 } };
  save('settings.json', JSON.stringify(settings));
  save('stranger.json', JSON.stringify({ ...settings, trimDb: { TpFL: 1 } }));
  save('wild.json', JSON.stringify({ ...settings, trimDb: { FL: 90 } }));
  save('columns.txt', 'frequency and level\n');
  saveWav('short.wav', [samples.subarray(0, 8 * 48000)]);
  saveWav('unfinished.wav', [samples.subarray(0, samples.length - 2 * 48000)]);
  saveWav('silent.wav', [new Float32Array(samples.length)]);
  saveWav('hiss.wav', [hiss]);
  saveWav('telephone.wav', [samples], 16000);
  saveWav('mislabelled.wav', [samples], 44100);
  const whole = writeWav({ channels: [samples], sampleRate: 48000, depth: 24, channelMask: 0 });
  save('truncated.wav', whole.subarray(0, 500000));
  save('text.wav', 'not sound');
  const float = { sampleRate: 48000, depth: 'float', channelMask: 0 } as const;
  const bytes = writeWav({ channels: [samples], ...float });
  new DataView(bytes.buffer).setFloat32(80 + 4 * 72000, NaN, true);
  save('broken.wav', bytes);
  save('take.json', JSON.stringify(schedule));
  save('edited.json', JSON.stringify({ ...schedule, peakDb: -6 }));
  save('other.json', JSON.stringify(scheduleTake(layout, { sweepSeconds: 1, peakDb: -20 })));
  save('newer.json', JSON.stringify({ ...schedule, version: 3 }));
}, 120_000);

afterAll(() => rmSync(directory, { recursive: true, force: true }));

describe('leadline read', () => {
  it('prints the clock, the capture and every channel, as the truth of the room has them', async () => {
    const { code, out, err } = await read('capture.wav', '--reference-distance', '2.40');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const readings = JSON.parse(out);
    expectClose(readings.clock.skewPpm, truth.skewPpm, 0.2, 'the accuracy asked of the skew');
    expect(readings.clock.faults).toEqual([]);
    expect(readings.capture.clipped).toEqual([]);
    expect(readings.capture.noiseFloorDb).toBeLessThan(-50);
    expect(readings.channels.map((one: { channel: string }) => one.channel)).toEqual(
      schedule.channels,
    );
    for (const [index, { channel, arrivalSeconds }] of truth.channels.entries()) {
      const found = readings.channels[index];
      expect(Object.keys(found)).toEqual(
        expect.arrayContaining([...namedFields, 'rolloff', 'faults']),
      );
      if (channel.startsWith('Sub')) continue;
      expectClose(found.arrivalSeconds, arrivalSeconds, 0.01 / 343, '10 mm');
      expectClose(found.distanceMetres, 2.4 + 343.2 * arrivalSeconds, 0.01, '10 mm');
      expect(Object.keys(found.rolloff)).toEqual(
        expect.arrayContaining(['f3Hz', 'f6Hz', 'f10Hz', 'box']),
      );
      expect(found.rolloff.f10Hz).toEqual({
        median: expect.any(Number),
        interval: [expect.any(Number), expect.any(Number)],
      });
    }
  });

  it('prints what its own schema takes back, with and without curves', async () => {
    const plain = await read('capture.wav', '--temperature', '-5');
    expect(plain.out).not.toContain('curves');
    expect(plain.err).toMatch(/2\.40 m to FL assumed/);
    expect(parseReadings(plain.out)).toMatchObject({ layout: '3.1', temperatureCelsius: -5 });
    const curved = await read('capture.wav', '--curves');
    const readings = parseReadings(curved.out);
    if (isTrouble(readings)) return expect.fail(readings.sentence);
    expect(readings.channels[0]?.curves?.response.hz.length).toBeGreaterThan(50);
  });

  it('takes the chosen channel of a recording with several', async () => {
    const mono = await read('capture.wav');
    const stereo = await read('stereo.wav', '--capture-channel', '2');
    expect(stereo).toMatchObject({ code: 0, out: mono.out });
  });

  it('takes the microphone out by its calibration file, and says so', async () => {
    const plain = JSON.parse((await read('capture.wav')).out);
    const read10 = await read('capture.wav', '--calibration', 'microphone.txt');
    const corrected = JSON.parse(read10.out);
    expect(corrected.notes[0]).toMatch(/microphone\.txt/);
    // Most of 500 to 2000 Hz lies where the file says 0 to 0.3 dB.
    expectClose(corrected.channels[1].levelDb, plain.channels[1].levelDb, 0.2);
    expect(corrected.channels[1].levelDb).toBeLessThan(plain.channels[1].levelDb);
  });

  it('takes out what was in force in the processor, and says what is assumed without', async () => {
    const plain = JSON.parse((await read('capture.wav')).out);
    expect(plain.notes.join(' ')).toContain('Nothing was declared to be in force');
    const declared = JSON.parse((await read('capture.wav', '--in-force', 'settings.json')).out);
    expectClose(declared.channels[0].levelDb, plain.channels[0].levelDb - 2, 1e-9);
    expectClose(declared.channels[2].levelDb, plain.channels[2].levelDb + 1.5, 1e-9);
    expect(declared.notes.join(' ')).toContain('Taken out of the readings, as declared: the trims');
  });

  it('reads the speaker the microphone was held to as one close by, with its truth inside', async () => {
    const { code, out, err } = await read('close.wav', '--close', 'FL');
    expect({ code, err }).toEqual({ code: 0, err: expect.stringMatching(/assumed/) });
    const { f3Hz } = JSON.parse(out).channels[0].rolloff;
    const [low, high] = f3Hz.interval;
    const told = truth.channels.find(({ channel }) => channel === 'FL');
    expect(low).toBeLessThan(told?.f3Hz ?? NaN);
    expect(high).toBeGreaterThan(told?.f3Hz ?? NaN);
    const plain = JSON.parse((await read('close.wav')).out).channels[0].rolloff.f3Hz;
    const alone = JSON.parse((await read('close.wav', '--close', 'FL', '--cone-alone')).out);
    expect(f3Hz).not.toEqual(plain);
    expect(f3Hz).not.toEqual(alone.channels[0].rolloff?.f3Hz);
  });

  it.each([
    [['--close', 'TpFL'], /--close TpFL is not in this take: it has FL\./],
    [['--cone-alone'], /go with --close/],
    [['--close', 'FL', '--port-diameter', '0.05'], /give both, or neither/],
    [['--close', 'FL', '--port-diameter', '9', '--cone-diameter', '0.1'], /0\.01 to 1 m|between/],
    [['--close', 'FL', '--port-diameter', '0.5', '--cone-diameter', '0.1'], /more than twice/],
  ] as const)('refuses %s in a sentence', async (options, sentence) => {
    const { code, out, err } = await read('close.wav', ...options);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(sentence);
  });

  it('goes by the electrical loopback of a recording, which needs no tape', async () => {
    const channels = ['--capture-channel', '1', '--loopback-channel', '2'];
    const { code, out, err } = await read('loopback.wav', ...channels);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const readings = JSON.parse(out);
    expect(readings).toMatchObject({ absolute: true, referenceDistanceAssumed: false });
    expectClose(readings.referenceDistanceMetres, 2.4, 0.01, 'the room stands FL there');
  });

  it.each<[string, string[], RegExp]>([
    ['a file that is no WAV', ['text.wav'], /text\.wav: This is not a WAV file/],
    [
      'a truncated WAV',
      ['truncated.wav'],
      /truncated\.wav: This WAV is cut off: it claims \d+ bytes/,
    ],
    [
      'a rate without treble',
      ['telephone.wav'],
      /telephone\.wav: The recording's rate is 16000 Hz/,
    ],
    [
      'a rate that is not the true one',
      ['mislabelled.wav'],
      /mislabelled\.wav: The capture (says 44100 Hz|holds a different take)/,
    ],
    ['several channels', ['stereo.wav'], /only channel 2 \(.*--capture-channel N/],
    ['a channel that is not there', ['capture.wav', '--capture-channel', '2'], /no channel 2/],
    ['a recording shorter than the take', ['short.wav'], /short\.wav: The recording lasts 8\.0 s/],
    [
      'a recording stopped too early',
      ['unfinished.wav'],
      /unfinished\.wav: The capture ends \d\.\d s before/,
    ],
    ['digital silence', ['silent.wav'], /silent\.wav: The recording is silent/],
    ['noise without a take in it', ['hiss.wav'], /hiss\.wav: None of the 5 timing marks/],
    ['samples that are no numbers', ['broken.wav'], /sample 72000 \(1\.500 s\) of channel 1/],
    ['the schedule of another take', ['capture.wav', '--take', 'other.json'], /different take/],
    [
      'a take changed by hand',
      ['capture.wav', '--take', 'edited.json'],
      /edited\.json: .*changed after/,
    ],
    ['a take of another version', ['capture.wav', '--take', 'newer.json'], /"version" is 3/],
    ['a recording for a take', ['capture.wav', '--take', 'capture.wav'], /it is not JSON/],
    [
      'a take that is not there',
      ['capture.wav', '--take', 'gone.json'],
      /gone\.json cannot be read/,
    ],
    ['a directory for a recording', ['.'], /\. cannot be read: it is a directory/],
    [
      'a temperature out of range',
      ['capture.wav', '--temperature', '61'],
      /-40 to 60 °C, and "61"/,
    ],
    [
      'a distance that is no number',
      ['capture.wav', '--reference-distance', '2,4'],
      /dot for decimals/,
    ],
    [
      'a calibration file that makes no sense',
      ['capture.wav', '--calibration', 'columns.txt'],
      /columns\.txt: .*row of numbers/,
    ],
    [
      'settings in force of a speaker that is not there',
      ['capture.wav', '--in-force', 'stranger.json'],
      /stranger\.json: .*name TpFL, which layout 3\.1 does not have/,
    ],
    [
      'a trim no processor has',
      ['capture.wav', '--in-force', 'wild.json'],
      /wild\.json: .*"trimDb\.FL" is 90 and should be at most 60/,
    ],
    [
      'one channel for microphone and loopback',
      ['stereo.wav', '--capture-channel', '2', '--loopback-channel', '2'],
      /cannot be the microphone and the loopback/,
    ],
    [
      'a loopback channel that is not there',
      ['stereo.wav', '--capture-channel', '2', '--loopback-channel', '3'],
      /no channel 3\..*--loopback-channel N/,
    ],
    ['a distance out of range', ['capture.wav', '--reference-distance', '0'], /0\.1 to 30 m/],
  ])('refuses %s in one sentence, prints and writes nothing', async (_what, args, finding) => {
    const before = readdirSync(directory);
    const [capture = '', ...options] = args;
    const { code, out, err } = await read(capture, ...options);
    expect({ code, out }).toEqual({ code: 1, out: '' });
    expect(err).toMatch(finding);
    expect(err.trimEnd()).toMatch(/^leadline read: .*\.$/);
    expect(readdirSync(directory)).toEqual(before);
  });

  it('stops when it is told to, and prints nothing', async () => {
    const args = ['read', '--take', 'take.json', '--capture', 'capture.wav'];
    const stopped = await commandLine([readCommand], directory, args, AbortSignal.abort());
    expect(stopped).toMatchObject({ code: 1, out: '' });
    expect(stopped.err).toMatch(/stopped/);
  });
});

const namedFields = [
  'arrivalSeconds',
  'distanceMetres',
  'distanceInterval',
  'ceilingPathMetres',
  'levelDb',
  'polarity',
];

function read(capture: string, ...args: string[]) {
  const take = capture === 'close.wav' ? 'close.json' : 'take.json';
  const line = ['read', '--take', take, '--capture', capture, ...args];
  return commandLine([readCommand], directory, line);
}

function save(name: string, content: string | Uint8Array): void {
  writeFileSync(join(directory, name), content);
}

function saveWav(name: string, channels: Float32Array[], sampleRate = 48000): void {
  save(name, writeWav({ channels, sampleRate, depth: 24, channelMask: 0 }));
}
