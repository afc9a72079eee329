import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { ChannelLabel } from '../../../src/system/channel';

/** Invented readings of a 3.1 room, as `leadline read` would print them. */
export function exampleReadings(): Readings {
  return {
    format: 'leadline-readings',
    version: 1,
    layout: '3.1',
    takeId: '0123456789abcdef',
    reference: 'FL',
    referenceDistanceMetres: 2.4,
    absolute: false,
    temperatureCelsius: 20,
    simulated: true,
    clock: {
      skewPpm: 31.4,
      skewInterval: [31.3, 31.5],
      faults: [{ kind: 'lost', samples: 128, channel: 'FR' }],
    },
    capture: { clipped: [], noiseFloorDb: -71, peakDb: -14 },
    notes: [],
    joined: [],
    channels: [main('FL', 0, 2.4), main('FR', 0.0003, 2.503), main('FC', -0.0004, 2.263), sub()],
  };
}

function main(
  channel: ChannelLabel,
  arrivalSeconds: number,
  distanceMetres: number,
): ChannelReading {
  return {
    channel,
    arrivalSeconds,
    arrivalInterval: [arrivalSeconds - 1e-5, arrivalSeconds + 1e-5],
    distanceMetres,
    distanceInterval: [distanceMetres - 0.01, distanceMetres + 0.01],
    ceilingPathMetres: null,
    levelDb: -38,
    polarity: 'normal',
    rolloff: {
      f3Hz: { median: 62, interval: [48, 80] },
      f6Hz: { median: 52, interval: [44, 61] },
      f10Hz: { median: 43, interval: [37, 50] },
      f6UpperHz: 57,
      box: { kind: 'cannot tell', probability: 0.62 },
    },
    bassMarginDb: 31,
    peakToNoiseDb: 55,
    decaySeconds: null,
    faults: [],
    notes: [],
    curves: null,
  };
}

function sub(): ChannelReading {
  return {
    ...main('Sub 1', 0, 0),
    arrivalSeconds: null,
    arrivalInterval: null,
    distanceMetres: null,
    distanceInterval: null,
    polarity: 'cannot tell',
    rolloff: null,
    notes: ['No arrival: this channel carries nothing above 500 Hz.'],
  };
}
