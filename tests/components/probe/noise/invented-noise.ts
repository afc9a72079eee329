import type { NoiseReading, NoiseRequest, NoiseState } from '../../../../src/noise/noise-state';
import { inventedReadings, layout524 } from '../../fixtures';
import { inventedSpectrum } from './invented-spectrum';

export const inventedRequest: NoiseRequest = {
  kind: 'noise',
  channel: 'FL',
  lowHz: 10,
  highHz: 20_000,
  gainDb: -30,
  bandsPerOctave: 3,
  averagingSeconds: 15,
};

/** Noise that runs on FL, six of fifteen seconds averaged. */
export function inventedNoise(changes: Partial<NoiseState> = {}): NoiseState {
  return {
    request: inventedRequest,
    seconds: 6,
    secondsLeft: 9,
    complete: false,
    spectrum: inventedSpectrum(3),
    bandLevelDb: -46.24,
    soundLevel: { weighting: 'C', time: 'slow', db: 75.16, calibrated: true },
    reading: null,
    warnings: [],
    ...changes,
  };
}

const responseOf = (change: (db: number) => number) => {
  const response = inventedReadings(layout524).channels[0]?.curves?.response;
  if (!response) throw new RangeError('no response');
  return { ...response, db: response.db.map(change) };
};

/** A reading of noise on FL that was kept. */
export function keptReading(changes: Partial<NoiseReading> = {}): NoiseReading {
  return {
    id: 'kept 1',
    positionId: 'seat-1',
    kind: 'noise',
    channel: 'FL',
    startedAt: '2025-01-01T00:02:00.000Z',
    rig: 'practice',
    simulated: true,
    lowHz: 20,
    highHz: 20_000,
    seconds: 15,
    levelDb: -31.24,
    response: responseOf((db) => db + 0.5),
    rolloff: null,
    notes: [],
    ...changes,
  };
}
