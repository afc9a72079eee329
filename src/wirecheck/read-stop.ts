import { bandPower } from '../../dsp/level/band-level';
import { powerToDb } from '../../dsp/level/decibels';
import { powerSpectrum } from '../../dsp/response/power-spectrum';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { findArrival } from '../../dsp/timing/find-arrival';
import { findClipping } from '../../dsp/timing/clipping';
import { readPolarity } from '../../dsp/timing/polarity';
import type { Capture } from '../rig/port';
import { isSub } from '../system/channel-names';
import type { Schedule } from '../take/schedule';
import { trouble, type Trouble } from '../trouble';
import { findCommonDelay } from './find-common-delay';
import { hearBursts, type HeardBurst } from './hear-bursts';
import type { WalkSound } from './walk';

/** What was heard at one stop of a walk, or from the seat. */
export interface StopReading {
  /** One per channel of the layout, in the order they sounded. */
  readonly sounds: readonly WalkSound[];
}

/** Bands a burst's level and arrival are read in, Hz. */
const levelHz = { main: [300, 6000], sub: [30, 120] } as const;
const arrivalHz = { lowHz: 2000, highHz: 9000 } as const;
/** A channel counts as heard when it stands so far over the noise, dB: power in its band, and peak. */
const leastMarginDb = 6;
const leastPeakDb = 18;

/**
 * Level, arrival and polarity of every channel at one stop (see layOutStop), whatever the delay of
 * the audio path up to 0.9 s and however many channels are silent. Arrivals are seconds on the
 * stop's own clock, which starts at an unknown moment. Takes the capture at the schedule's rate
 * (RangeError else). A Trouble, with what to do, when the capture clipped, lost audio, or holds
 * nothing of the stop.
 */
export function readStop(
  schedule: Schedule,
  capture: Pick<Capture, 'samples' | 'sampleRate' | 'gaps'>,
): StopReading | Trouble {
  if (capture.sampleRate !== schedule.sampleRate) {
    throw new RangeError(`a stop is read at ${schedule.sampleRate} Hz, got ${capture.sampleRate}`);
  }
  if (capture.gaps.length > 0) return lost;
  const samples = Float64Array.from(capture.samples, (one) => (Number.isFinite(one) ? one : 0));
  const first = schedule.segments[0]?.sweepStart ?? 0;
  if (findClipping(samples, Math.min(first, samples.length), samples.length)) return clipped;
  const bursts = hearBursts(schedule, samples);
  const delay = findCommonDelay(bursts.filter(({ channel }) => !isSub(channel)));
  const sounds = bursts.map((burst) => readBurst(burst, delay));
  return sounds.every(({ levelDb }) => levelDb === null) ? nothing : { sounds };
}

/** One burst, when the path's delay is `delay` seconds; null: that cannot be told. */
function readBurst(burst: HeardBurst, delay: number | null): WalkSound {
  const { channel } = burst;
  const sub = isSub(channel);
  const ir = responseAround(burst, delay ?? 0, sub);
  const [lowHz, highHz] = sub ? levelHz.sub : levelHz.main;
  const heard = bandPower(powerSpectrum(ir), lowHz, highHz);
  const noise =
    (bandPower(powerSpectrum(burst.noise), lowHz, highHz) * ir.samples.length) /
    burst.noise.samples.length;
  const clear = powerToDb(heard) - powerToDb(noise) >= leastMarginDb;
  const silent = { channel, levelDb: null, arrivalSeconds: null, polarity: 'cannot tell' } as const;
  if (delay === null || !clear) return silent;
  const levelDb = powerToDb(heard - noise);
  if (sub) return { ...silent, levelDb };
  if (peakDb(ir.samples) - rmsDb(before(burst, delay)) < leastPeakDb) return silent;
  const arrival = findArrival(ir, arrivalHz);
  if (!arrival) return { ...silent, levelDb };
  const { polarity } = readPolarity(ir, arrival);
  return {
    channel,
    levelDb,
    arrivalSeconds: arrival.bandAdapted ? null : arrival.seconds,
    polarity,
  };
}

/** A burst's response from a little before the common delay to the end of its echo. */
function responseAround({ response }: HeardBurst, delay: number, sub: boolean): ImpulseResponse {
  const { samples, sampleRate, zeroIndex } = response;
  const at = zeroIndex + Math.round(delay * sampleRate);
  const from = Math.max(0, at - Math.round((sub ? 0.1 : 0.05) * sampleRate));
  const to = Math.min(samples.length, at + Math.round((sub ? 0.35 : 0.2) * sampleRate));
  return { samples: samples.slice(from, to), sampleRate, zeroIndex: zeroIndex - from };
}

/** What the same deconvolution gives before anything of the burst can have arrived. */
function before({ response }: HeardBurst, delay: number): Float64Array {
  const { samples, sampleRate, zeroIndex } = response;
  const end = zeroIndex + Math.round((delay - 0.005) * sampleRate);
  return samples.subarray(Math.max(0, end - Math.round(0.1 * sampleRate)), end);
}

function peakDb(samples: Float64Array): number {
  let peak = 0;
  for (const value of samples) peak = Math.max(peak, value * value);
  return powerToDb(peak);
}

function rmsDb(samples: Float64Array): number {
  let sum = 0;
  for (const value of samples) sum += value * value;
  return powerToDb(sum / Math.max(1, samples.length));
}

const lost = trouble(
  'failed',
  'The recorder lost audio at this stop. Stay where you are and play it again.',
);
const clipped = trouble(
  'too-loud',
  'The microphone clipped at this stop. Lower the level, or hold it a little farther from the speaker, and play it again.',
);
const nothing = trouble(
  'silence',
  'Nothing of this stop was heard. Check that the amplifiers are on and that the microphone is the one in your hand, then play it again.',
);
