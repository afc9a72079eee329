import type { Readings } from '../../src/reading/reading';
import type { ScipyResult } from './run-scipy';

/** How far the two may differ and still have read the same take the same way. */
const skewPpm = 0.1;
const arrivalSeconds = 20e-6;
const levelDb = 0.05;
const f6Share = 0.05;

/** What the two readings do not agree on; subs' arrivals are read in different bands. */
export function compareReadings(
  readings: Readings,
  scipy: ScipyResult['reading'],
  sampleRate: number,
): string[] {
  const out: string[] = [];
  const check = (what: string, bench: number | null, other: number, limit: number): void => {
    if (bench === null || !(Math.abs(bench - other) <= limit)) {
      out.push(`${what}: ${bench} and ${other}`);
    }
  };
  check('skew, ppm', readings.clock.skewPpm, scipy.skewPpm, skewPpm);
  const zero = scipy.channels.find(({ channel }) => channel === readings.reference);
  for (const reading of readings.channels) {
    const other = scipy.channels.find(({ channel }) => channel === reading.channel);
    if (!other || !zero) {
      out.push(`${reading.channel} is missing`);
      continue;
    }
    check(`level of ${reading.channel}, dB`, reading.levelDb, other.levelDb, levelDb);
    if (reading.channel.startsWith('Sub')) continue;
    const arrival = (other.arrivalSamples - zero.arrivalSamples) / sampleRate;
    check(`arrival of ${reading.channel}, s`, reading.arrivalSeconds, arrival, arrivalSeconds);
    const f6 = reading.rolloff?.f6Hz.median ?? null;
    check(`f6 of ${reading.channel}, Hz`, f6, other.f6Hz, f6Share * other.f6Hz);
  }
  return out;
}
