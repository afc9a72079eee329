// Invented speakers and readings for the tests of the screens. Nothing here was measured.
import type { ChannelReading, Estimate, ReadingCurves, Readings } from '../../src/reading/reading';
import type { Channel, ChannelLabel, GroupId, Layout } from '../../src/system/channel';
import { layoutOf } from './fake-bench';
import { seededRandom } from '../../dsp/signal/random';

/** Five at ear height, two subs, four heights. */
export const layout524 = layoutOf('5.2.4');
/** The largest layout there is. */
export const layout19 = layoutOf('9.4.6');
/** One speaker alone. */
export const layoutOne: Layout = {
  name: 'one',
  title: 'one',
  channels: layout524.channels.slice(0, 1),
};

const rolloffHz: Readonly<Record<GroupId, number>> = {
  fronts: 44,
  centre: 71,
  wides: 66,
  sides: 62,
  backs: 58,
  'front heights': 104,
  'middle heights': 98,
  'back heights': 92,
  subs: 21,
};
const reference = 2.4;
const speed = 343.2;

function around(median: number, share: number): Estimate {
  return { median, interval: [median * (1 - share), median * (1 + share)] };
}

function inventedCurves(
  cutoffHz: number,
  arrival: number,
  random: () => number,
  sub: boolean,
): ReadingCurves {
  const hz = Array.from({ length: 250 }, (_, i) => 15 * 2 ** (i / 24)).filter((f) => f <= 20_000);
  const rough = Array.from({ length: 4 }, () => random() * 6.28);
  const high = (f: number) => -10 * Math.log10(1 + (cutoffHz / f) ** 4);
  const low = (f: number) =>
    sub ? -10 * Math.log10(1 + (f / 160) ** 8) : -0.4 * Math.log2(Math.max(1, f / 3000));
  const ripple = (f: number) =>
    1.6 * Math.sin(Math.log(f) * 11 + (rough[0] ?? 0)) +
    Math.sin(Math.log(f) * 23 + (rough[1] ?? 0)) +
    (f < 300 ? 3.2 * Math.sin(Math.log(f) * 15 + (rough[2] ?? 0)) : 0);
  const fitHz = Array.from({ length: 61 }, (_, i) => 15 * 2 ** (i / 12));
  const spread = (f: number) => 0.5 + 4 * Math.max(0, Math.log2((cutoffHz * 2) / f));
  const start = -0.004;
  const step = 1 / 12_000;
  return {
    response: {
      hz,
      db: hz.map((f) => high(f) + low(f) + ripple(f)),
      noiseDb: hz.map((f) => -46 - 9 * Math.log10(f / 60) + 2 * random() + (f < 60 ? 8 : 0)),
    },
    fit: {
      hz: fitHz,
      db: fitHz.map(high),
      low: fitHz.map((f) => high(f) - spread(f)),
      high: fitHz.map((f) => Math.min(0.4, high(f) + spread(f))),
    },
    envelope: {
      startSeconds: start,
      stepSeconds: step,
      level: Array.from({ length: 260 }, (_, i) => {
        const after = start + i * step - arrival;
        if (after < -0.0001) return 0.01 + 0.01 * random();
        const echo = Math.abs(after - 0.0023) < 0.0001 ? 0.35 : 0;
        return Math.min(
          1,
          Math.exp(-Math.max(0, after) * 900) + Math.exp(-after * 260) * 0.4 * random() + echo,
        );
      }),
    },
  };
}

/** A plausible reading of one channel. */
export function inventedReading(channel: Channel, index: number): ChannelReading {
  const random = seededRandom(index + 11);
  const distance = channel.group === 'fronts' ? reference + index * 0.03 : 1.8 + random() * 1.4;
  const arrival = (distance - reference) / speed;
  const sub = channel.kind === 'sub';
  const cutoff = rolloffHz[channel.group] * (0.96 + 0.08 * random());
  return {
    channel: channel.label,
    arrivalSeconds: sub ? null : arrival,
    arrivalInterval: sub ? null : [arrival - 0.00001, arrival + 0.00001],
    distanceMetres: sub ? null : distance,
    distanceInterval: sub ? null : [distance - 0.004, distance + 0.004],
    ceilingPathMetres: channel.label.startsWith('TpB') ? distance + 1.31 : null,
    levelDb: -32 + 5 * random(),
    polarity: sub ? 'cannot tell' : 'normal',
    rolloff: {
      f3Hz: around(cutoff, 0.09),
      f6Hz: around(cutoff * 0.76, 0.07),
      f10Hz: around(cutoff * 0.58, 0.06),
      f6UpperHz: cutoff * 0.79,
      box: { kind: 'closed', probability: 0.91 },
    },
    bassMarginDb: 34,
    peakToNoiseDb: 52,
    decaySeconds: null,
    faults: [],
    notes: sub
      ? [`${channel.label} plays too low for an arrival; align it through the crossover.`]
      : [],
    curves: inventedCurves(cutoff, arrival, random, sub),
  };
}

/** Readings of a whole layout. */
export function inventedReadings(layout: Layout, changes: Partial<Readings> = {}): Readings {
  return {
    format: 'leadline-readings',
    version: 1,
    layout: layout.name,
    takeId: 'invented',
    reference: 'FL',
    referenceDistanceMetres: reference,
    absolute: false,
    temperatureCelsius: 20,
    simulated: true,
    clock: { skewPpm: -43.2, skewInterval: [-43.5, -42.9], faults: [] },
    capture: { clipped: [], noiseFloorDb: -71.4, peakDb: -9.2 },
    notes: [],
    joined: [],
    channels: layout.channels.map(inventedReading),
    ...changes,
  };
}

/** A reading in which nothing could be told. */
export function emptyReading(channel: ChannelLabel): ChannelReading {
  return {
    channel,
    arrivalSeconds: null,
    arrivalInterval: null,
    distanceMetres: null,
    distanceInterval: null,
    ceilingPathMetres: null,
    levelDb: null,
    polarity: 'cannot tell',
    rolloff: null,
    bassMarginDb: null,
    peakToNoiseDb: null,
    decaySeconds: null,
    faults: [{ kind: 'silent', sentence: `${channel} gave no sound above the room noise.` }],
    notes: [],
    curves: null,
  };
}
