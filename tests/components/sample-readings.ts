import type { ChannelReading, Readings } from '../../src/reading/reading';
import type { Layout } from '../../src/system/channel';

/** Invented readings: a small room whose speakers stand a little apart from one another. */
export function sampleReadings(layout: Layout): Readings {
  return {
    format: 'leadline-readings',
    version: 1,
    layout: layout.name,
    takeId: 'invented',
    reference: 'FL',
    referenceDistanceMetres: 2.4,
    absolute: false,
    temperatureCelsius: 20,
    simulated: true,
    clock: { skewPpm: -43.2, skewInterval: [-43.5, -42.9], faults: [] },
    capture: { clipped: [], noiseFloorDb: -72, peakDb: -14 },
    notes: [],
    joined: [],
    channels: layout.channels.map((channel, index) =>
      sampleChannel(channel.label, channel.kind, index),
    ),
  };
}

function sampleChannel(
  channel: ChannelReading['channel'],
  kind: 'bed' | 'height' | 'sub',
  index: number,
): ChannelReading {
  const distanceMetres = kind === 'sub' ? null : 2.4 - 0.11 * ((index * 7) % 5);
  return {
    channel,
    arrivalSeconds: distanceMetres === null ? null : (distanceMetres - 2.4) / 343.2,
    arrivalInterval: null,
    distanceMetres,
    distanceInterval:
      distanceMetres === null ? null : [distanceMetres - 0.004, distanceMetres + 0.004],
    ceilingPathMetres: null,
    levelDb: -31.5 - index * 0.4,
    polarity: channel === 'SiR' ? 'inverted' : kind === 'sub' ? 'cannot tell' : 'normal',
    rolloff: null,
    bassMarginDb: 34,
    peakToNoiseDb: 52,
    decaySeconds: null,
    faults: [],
    notes:
      kind === 'sub'
        ? ['A sub gives no sharp arrival: its distance is set with the crossover.']
        : [],
    curves: null,
  };
}
