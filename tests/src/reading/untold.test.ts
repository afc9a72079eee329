import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { findArrival } from '../../../dsp/timing/find-arrival';
import { joinReadings } from '../../../src/reading/join-readings';
import { readChannel, type ChannelSource } from '../../../src/reading/read-channel';
import { readDrives } from '../../../src/reading/lowest-frequency';
import { readDistortion } from '../../../src/reading/read-distortion';
import { tellRolloff } from '../../../src/reading/rolloff-finding';
import type { ChannelReading } from '../../../src/reading/reading';
import type { ReadingFrame } from '../../../src/reading/reading-frame';
import { channelsInForce } from '../../../src/reading/take-out-settings';
import { untoldOf, type UntoldNumber } from '../../../src/reading/untold';
import type { ChannelLabel } from '../../../src/system/channel';
import { nothingInForce, usualFilters } from '../../../src/system/declared-settings';
import { readingsOf } from '../proposal/sample-readings';
import { layoutNamed } from './wired-room';

const layout = layoutNamed('5.1.2');
const rate = 48000;

/** What a person can be asked to do, one thing at a time. */
const action =
  /\b(Repeat|repeat (it|this)|More level would|longer sweep would|close to the (driver|speaker|sub) would|loopback would|Start the recording|Set it to|set it together|Type what|Leave all volumes|Use sweeps|Take it with|Measure it alone|Check its|Average four|Use a sweep)\b/;

/** Every field of a reading that may be empty, and what it is called when it is. */
const numbers: Readonly<Partial<Record<keyof ChannelReading, UntoldNumber>>> = {
  arrivalSeconds: 'arrival',
  arrivalInterval: 'arrival',
  distanceMetres: 'distance',
  distanceInterval: 'distance',
  levelDb: 'level',
  polarity: 'polarity',
  rolloff: 'roll-off',
  bassMarginDb: 'bass margin',
  peakToNoiseDb: 'peak to noise',
  decaySeconds: 'decay',
};
/** Empty where there is nothing to tell: no path over the ceiling, nothing to draw, no noise. */
const mayBeEmpty: readonly (keyof ChannelReading)[] = ['ceilingPathMetres', 'curves', 'margins'];

/** Fields that are empty without a sentence that asks for one thing; none should be. */
function silentGaps(reading: ChannelReading): string[] {
  const told = untoldOf(reading);
  const hasAction = (what: UntoldNumber): boolean =>
    told.some((one) => one.what === what && action.test(one.sentence));
  const fields = Object.entries(reading) as [keyof ChannelReading, unknown][];
  const empty = fields.flatMap(([field, value]) => {
    const isEmpty = value === null || value === 'cannot tell';
    if (!isEmpty || mayBeEmpty.includes(field)) return [];
    const what = numbers[field];
    return what && hasAction(what) ? [] : [field];
  });
  const box = reading.rolloff?.box.kind === 'cannot tell' && !hasAction('box') ? ['box'] : [];
  const distortion =
    reading.distortion?.kind !== 'curves' && !hasAction('distortion') ? ['distortion'] : [];
  const timed = reading.distanceMetres !== null || !reading.channel.startsWith('Tp');
  const ceiling = timed || hasAction('ceiling path') ? [] : ['ceilingPathMetres'];
  return [...empty, ...box, ...distortion, ...ceiling];
}

/** A click with a tail of noise that falls by 60 dB in half a second, at a level. */
function click(level: number, hiss: number, seed: number): ImpulseResponse {
  const normal = gaussian(seededRandom(seed));
  const zeroIndex = Math.round(0.17 * rate);
  const samples = Float64Array.from({ length: Math.round(1.53 * rate) }, (_, n) => {
    const after = n - zeroIndex - 300;
    const tail = after > 0 ? 0.03 * normal() * 10 ** ((-3 * after) / (0.5 * rate)) : 0;
    return level * ((after === 0 ? 1 : 0) + tail) + hiss * normal();
  });
  return { samples, sampleRate: rate, zeroIndex };
}

/** What a sub gives: a burst at 50 Hz. */
function thud(hiss: number, seed: number): ImpulseResponse {
  const quiet = click(0, hiss, seed);
  const samples = quiet.samples.map((value, n) => {
    const seconds = Math.max(0, n - quiet.zeroIndex - 300) / rate;
    const swell = (1 - Math.exp(-seconds / 0.01)) ** 3 * Math.exp(-seconds / 0.03);
    return value + 0.05 * swell * Math.sin(2 * Math.PI * 50 * seconds);
  });
  return { ...quiet, samples };
}

/** Noise as it went through the same path. */
const noiseAt = (hiss: number): ImpulseResponse => click(0, hiss, 77);

const clear = click(1, 1e-5, 1);
const reference = findArrival(clear);
const frame: ReadingFrame = {
  reference,
  departure: null,
  referenceDistanceMetres: 2.4,
  metresPerSecond: 343.2,
};

function read(
  label: ChannelLabel,
  source: Partial<ChannelSource>,
  inFrame: ReadingFrame = frame,
): ChannelReading {
  const channel = layout.channels.find((one) => one.label === label);
  if (!channel) throw new RangeError(`no ${label}`);
  const whole = {
    ir: clear,
    noise: noiseAt(1e-5),
    faults: [],
    spoilt: null,
    mendedHz: null,
    notes: [],
  };
  return readChannel({ channel, ...whole, ...source }, inFrame);
}

const inForce = (change: Partial<typeof nothingInForce>, label: ChannelLabel) => {
  const settings = { ...nothingInForce, filters: usualFilters, ...change };
  const own = channelsInForce(layout, 'FL', settings).get(label);
  return own ? { inForce: own } : {};
};

const spoilt = 'Audio is missing inside this segment: repeat it.';
const gain = {
  kind: 'gain',
  sentence: 'The gain changed by 3.0 dB. Repeat this segment.',
} as const;

/** A reading and the numbers that must be missing in it. */
const situations: readonly (readonly [string, ChannelReading, readonly UntoldNumber[]])[] = [
  [
    'a clear response of which the noise is not known',
    read('FR', { noise: null }),
    ['bass margin'],
  ],
  [
    'a segment that is spoilt',
    read('FR', { ir: null, spoilt, faults: [{ kind: 'lost', sentence: spoilt }] }),
    [
      'arrival',
      'distance',
      'level',
      'polarity',
      'roll-off',
      'bass margin',
      'peak to noise',
      'decay',
    ],
  ],
  [
    'a spoilt height, which may be bounced',
    read('TpFL', { ir: null, spoilt }),
    ['ceiling path', 'arrival', 'distance'],
  ],
  [
    'a speaker that is silent',
    read('FR', { ir: noiseAt(1e-3), noise: click(0, 1e-3, 5) }),
    ['arrival', 'distance', 'level', 'polarity', 'roll-off', 'decay'],
  ],
  [
    'a response under strong noise',
    read('FR', { ir: click(1, 0.05, 8), noise: noiseAt(0.05) }),
    ['level', 'roll-off'],
  ],
  ['a gain that changed', read('FR', { faults: [gain] }), ['level']],
  [
    'a reference speaker that could not be timed',
    read('FR', {}, { ...frame, reference: null }),
    ['arrival', 'distance'],
  ],
  [
    'the same with a loopback',
    read('FR', {}, { ...frame, reference: null, departure: reference }),
    ['arrival'],
  ],
  [
    'distances in force of which one is not declared',
    read('FR', inForce({ distanceMetres: { FL: 2.4 } }, 'FR')),
    ['arrival', 'distance'],
  ],
  [
    'a crossover in force that hides the roll-off',
    read('FR', inForce({ crossoverHz: { fronts: 250 } }, 'FR')),
    ['roll-off'],
  ],
  ['a sub', read('Sub 1', { ir: thud(1e-5, 3), noise: noiseAt(1e-5) }), ['polarity']],
  [
    'a sub under strong noise',
    read('Sub 1', { ir: click(1, 0.05, 9), noise: noiseAt(0.05) }),
    ['polarity', 'roll-off'],
  ],
  [
    'lost audio that was mended',
    read('FR', { mendedHz: 300 }),
    ['arrival', 'distance', 'polarity', 'level', 'roll-off'],
  ],
];

describe('what a reading cannot tell', () => {
  it.each(situations)('is told with one thing to do: %s', (_, reading, missing) => {
    expect(untoldOf(reading).map(({ what }) => what)).toEqual(expect.arrayContaining([...missing]));
    expect(silentGaps(reading)).toEqual([]);
  });

  it('is told of an empty reading of every speaker, also of fields that come later', () => {
    for (const { label } of layout.channels) {
      const reading = read(label, { ir: null, spoilt });
      const known: ChannelReading = { ...reading, notes: [] };
      expect(silentGaps(known)).toEqual([]);
    }
    const later = { ...read('FR', {}), lowestHz: null } as ChannelReading;
    expect(silentGaps(later)).toEqual(['lowestHz']);
  });

  it('is nothing where everything was told', () => {
    const [whole] = readingsOf('2.0').channels;
    if (!whole) throw new RangeError('no reading');
    const distortion = {
      kind: 'curves',
      hz: [],
      fundamentalDb: [],
      fundamentalNoiseDb: [],
      harmonics: [],
      total: { db: [], floorDb: [], limitedBy: [] },
      apartFromHz: null,
    } as const;
    expect(untoldOf({ ...whole, decaySeconds: 0.4, distortion })).toEqual([]);
  });

  it('names a close reading where the room hides the box', () => {
    const [whole] = readingsOf('2.0').channels;
    if (!whole?.rolloff) throw new RangeError('no roll-off');
    const box = { kind: 'cannot tell', probability: 0.6 } as const;
    const untold = untoldOf({ ...whole, rolloff: { ...whole.rolloff, box } });
    expect(untold.find(({ what }) => what === 'box')?.sentence).toContain(
      'A reading close to the driver would settle it.',
    );
  });

  it('asks for a loopback where takes share no reference speaker', () => {
    const one = readingsOf('2.0');
    const other = { ...one, takeId: 'other', reference: 'FR' as const };
    const fr = { ...other, channels: other.channels.filter(({ channel }) => channel === 'FR') };
    const fl = { ...one, channels: one.channels.filter(({ channel }) => channel === 'FL') };
    const joined = joinReadings([fl, fr]).channels.find(({ channel }) => channel === 'FR');
    if (!joined) throw new RangeError('no FR');
    expect(joined.distanceMetres).toBeNull();
    expect(silentGaps(joined)).toEqual([]);
  });
});

describe('what a roll-off or distortion cannot tell', () => {
  it.each([0, 1, 7])('is told with one thing to do: %i bands over the noise', (bandsWithMargin) => {
    const told = tellRolloff({ refused: 'noise', bandsWithMargin }, false, null);
    expect(told.rolloff).toBeNull();
    expect(told.notes.join()).toMatch(action);
  });

  const sweep = {
    startHz: 20,
    endHz: 20000,
    lengthSamples: 3 * rate,
    sampleRate: rate,
    fadeInSamples: 480,
    fadeOutSamples: 480,
  };
  const source = { long: clear, silence: noiseAt(1e-5), sweeps: 1, sweep, damaged: false };
  it.each([
    ['a damaged sweep', { damaged: true }],
    ['no sweep', { sweep: null }],
    ['a short sweep', { sweep: { ...sweep, lengthSamples: rate } }],
    ['overlapping sweeps', { long: null }],
    ['no silence', { silence: null }],
  ])('is told with one thing to do: %s', (_, change) => {
    const distortion = readDistortion({ ...source, ...change });
    expect(distortion).toMatchObject({ kind: 'cannot tell' });
    if (distortion.kind === 'cannot tell') expect(distortion.sentence).toMatch(action);
  });
});

describe('the lowest frequency a speaker may be asked for', () => {
  const hz = [20, 28, 40, 56, 80, 113, 160, 226];

  it.each(['noise', 'decay'] as const)(
    'is told with one thing to do where %s hides it',
    (limit) => {
      const hidden = {
        db: hz.map(() => null),
        floorDb: hz.map(() => -5),
        limitedBy: hz.map(() => limit),
      };
      const distortion = {
        kind: 'curves',
        hz,
        fundamentalDb: hz.map(() => -20),
        fundamentalNoiseDb: hz.map(() => -80),
        harmonics: [],
        total: hidden,
        apartFromHz: null,
      } as const;
      const [channel] = layout.channels;
      if (!channel) throw new RangeError('no channel');
      const { lowest } = readDrives(channel, [{ driveDb: 0, distortion }]);
      expect(lowest.length).toBe(3);
      for (const { found, sentence } of lowest) {
        expect(found).toMatchObject({ kind: 'cannot tell', hiddenBy: limit });
        expect(sentence).toMatch(action);
      }
    },
  );
});
