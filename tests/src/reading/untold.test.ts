import { describe, expect, it } from 'vitest';
import { findArrival } from '../../../dsp/timing/find-arrival';
import { joinReadings } from '../../../src/reading/join-readings';
import { readChannel, type ChannelSource } from '../../../src/reading/read-channel';
import type { ChannelReading } from '../../../src/reading/reading';
import type { ReadingFrame } from '../../../src/reading/reading-frame';
import { channelsInForce } from '../../../src/reading/take-out-settings';
import { untoldOf, type UntoldNumber } from '../../../src/reading/untold';
import type { ChannelLabel } from '../../../src/system/channel';
import { nothingInForce, usualFilters } from '../../../src/system/declared-settings';
import { readingsOf } from '../proposal/sample-readings';
import { click, noiseAt, silentGaps, thud } from './untold-gaps';
import { layoutNamed } from './wired-room';

const layout = layoutNamed('5.1.2');
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
    ['bass margin', 'level'],
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
