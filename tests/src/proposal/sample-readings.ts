import type { ChannelReading, Readings, RolloffReading } from '../../../src/reading/reading';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import { layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';

/** The layout of a name that is known to be right. */
export function layoutNamed(name: string): Layout {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  return layout;
}

/** A roll-off as a reading gives it; f6UpperHz is 5 % above f6. */
export function rolloffAt(f3Hz: number, f6Hz: number): RolloffReading {
  const around = (hz: number): { median: number; interval: readonly [number, number] } => ({
    median: hz,
    interval: [0.9 * hz, 1.1 * hz],
  });
  return {
    f3Hz: around(f3Hz),
    f6Hz: around(f6Hz),
    f10Hz: around(0.8 * f6Hz),
    f6UpperHz: 1.05 * f6Hz,
    box: { kind: 'closed', probability: 0.9 },
  };
}

/** One invented channel reading; what matters to a test is given in `known`. */
export function readingOf(
  channel: ChannelLabel,
  known: Partial<ChannelReading> = {},
): ChannelReading {
  return {
    channel,
    arrivalSeconds: 0,
    arrivalInterval: [0, 0],
    distanceMetres: 2.5,
    distanceInterval: [2.49, 2.51],
    ceilingPathMetres: null,
    levelDb: -30,
    polarity: 'normal',
    rolloff: channel.startsWith('Sub') ? null : rolloffAt(60, 50),
    bassMarginDb: 30,
    peakToNoiseDb: 50,
    decaySeconds: null,
    faults: [],
    notes: [],
    curves: null,
    ...known,
  };
}

/** Invented readings of a whole layout. */
export function readingsOf(
  layout: string,
  known: Partial<Record<ChannelLabel, Partial<ChannelReading>>> = {},
): Readings {
  return {
    format: 'leadline-readings',
    version: 1,
    layout,
    takeId: 'invented',
    reference: 'FL',
    referenceDistanceMetres: 2.5,
    absolute: false,
    temperatureCelsius: 20,
    simulated: true,
    clock: { skewPpm: 0, skewInterval: [0, 0], faults: [] },
    capture: { clipped: [], noiseFloorDb: -70, peakDb: -12 },
    notes: [],
    joined: [],
    channels: layoutNamed(layout).channels.map(({ label }) => readingOf(label, known[label])),
  };
}
