import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { ChannelReading, Fault, Readings } from '../../src/reading/reading';
import type { ScipyResult } from './run-scipy';

/** How far the two may differ and still have read the same take the same way. */
const skewPpm = 0.1;
const arrivalSeconds = 20e-6;
const levelDb = 0.05;
const f6Share = 0.05;
const marksSeconds = 0.4e-3;
const pathMetres = 0.01;
/** Of an interval's width. */
const widthShare = 0.1;
/** Sounds beside a sweep that move its response by less are said, not counted as faults, dB. */
const leastFaultDb = 1;

const disturbances: readonly Fault['kind'][] = ['bang', 'rumble', 'hum', 'voice', 'noisy'];

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
  const wide = (interval: readonly [number, number] | null | undefined): number | null =>
    interval ? interval[1] - interval[0] : null;
  const checkWidth = (what: string, bench: number | null, other: number): void =>
    check(`width of the interval of ${what}`, bench, other, widthShare * other);
  const faultsOf = (kinds: readonly string[], { faults }: ChannelReading): number =>
    faults.filter(({ kind }) => kinds.includes(kind)).length;
  check('skew, ppm', readings.clock.skewPpm, scipy.skewPpm, skewPpm);
  checkWidth('the skew', wide(readings.clock.skewInterval), 2 * scipy.skewHalfPpm);
  const gains = readings.channels.reduce((sum, one) => sum + faultsOf(['gain'], one), 0);
  // The bench holds a sweep for spoilt that lies farther from its marks.
  check('arrival by marks, s', 0, scipy.marksAfterSweepSeconds, marksSeconds);
  check('segments of another gain', gains, scipy.faults, 0);
  const zero = scipy.channels.find(({ channel }) => channel === readings.reference);
  for (const reading of readings.channels) {
    const other = scipy.channels.find(({ channel }) => channel === reading.channel);
    if (!other || !zero) {
      out.push(`${reading.channel} is missing`);
      continue;
    }
    check(`level of ${reading.channel}, dB`, reading.levelDb, other.levelDb, levelDb);
    const [below, above] = other.levelHalves;
    checkWidth(`the level of ${reading.channel}`, wide(reading.levelInterval), below + above);
    const loud = other.errorsDb.filter((error) => error >= leastFaultDb).length;
    check(`sounds beside ${reading.channel}`, faultsOf(disturbances, reading), loud, 0);
    if (reading.channel.startsWith('Sub')) continue;
    const arrival = (other.arrivalSamples - zero.arrivalSamples) / sampleRate;
    check(`arrival of ${reading.channel}, s`, reading.arrivalSeconds, arrival, arrivalSeconds);
    const metresPerSecond = speedOfSound(readings.temperatureCelsius);
    const metres = (samples: number): number =>
      readings.referenceDistanceMetres +
      (metresPerSecond * (samples - zero.arrivalSamples)) / sampleRate;
    if (other !== zero) {
      const half = Math.hypot(other.halfSamples, zero.halfSamples) / sampleRate;
      checkWidth(`the arrival of ${reading.channel}`, wide(reading.arrivalInterval), 2 * half);
    }
    const path = other.ceilingSamples === null ? null : metres(other.ceilingSamples);
    const own = reading.ceilingPathMetres;
    if (path !== null) check(`ceiling path of ${reading.channel}, m`, own, path, pathMetres);
    else if (own !== null) out.push(`ceiling path of ${reading.channel}: ${own} m and none`);
    const f6 = reading.rolloff?.f6Hz.median ?? null;
    check(`f6 of ${reading.channel}, Hz`, f6, other.f6Hz, f6Share * other.f6Hz);
  }
  return out;
}
