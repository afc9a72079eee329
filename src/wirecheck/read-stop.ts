import { msg } from '@lit/localize';
import { bandPower } from '../../dsp/level/band-level';
import { amplitudeToDb, powerToDb } from '../../dsp/level/decibels';
import { largestMagnitude } from '../../dsp/level/largest';
import { meanSquare } from '../../dsp/level/mean-square';
import { powerSpectrum } from '../../dsp/response/power-spectrum';
import type { ImpulseResponse } from '../../dsp/response/impulse-response';
import { findArrival } from '../../dsp/timing/find-arrival';
import { findClipping } from '../../dsp/timing/clipping';
import { readPolarity } from '../../dsp/timing/polarity';
import type { Capture } from '../rig/port';
import type { Schedule } from '../take/schedule';
import { trouble, type Trouble } from '../trouble';
import { findCommonDelay } from './find-common-delay';
import { hasMoved } from './has-moved';
import { hearBursts, type HeardBurst } from './hear-bursts';
import { soundsLikeSub } from './sounds-like-sub';
import type { WalkSound } from './walk';

/** What was heard at one stop of a walk, or from the seat. */
export interface StopReading {
  /** One per channel that sounded, in their order. */
  readonly sounds: readonly WalkSound[];
}

/** Bands a burst's level and arrival are read in, Hz. */
const levelHz = { middle: [300, 1500], low: [40, 120] } as const;
/** Where nothing but bass is heard, its onset is read. */
const onsetHz = { lowHz: 45, highHz: 180 } as const;
const arrivalHz = { lowHz: 2000, highHz: 9000 } as const;
/** A channel counts as heard when it stands so far over the noise, dB: power in its band, and peak. */
const leastMarginDb = { middle: 6, low: 10 } as const;
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
  if (capture.gaps.length > 0) return lost();
  const samples = Float64Array.from(capture.samples, (one) => (Number.isFinite(one) ? one : 0));
  const first = schedule.segments[0]?.sweepStart ?? 0;
  if (findClipping(samples, Math.min(first, samples.length), samples.length)) return clipped();
  const bursts = hearBursts(schedule, samples);
  const delay = findCommonDelay(bursts);
  const once = bursts.slice(0, schedule.channels.length);
  if (
    delay !== null &&
    bursts.slice(once.length).some((again, n) => movedFrom(once[n], again, delay))
  )
    return lost();
  const sounds = once.map((burst) => readBurst(burst, delay));
  const heard = ({ levelDb, lowDb }: WalkSound): boolean => levelDb !== null || lowDb !== null;
  return sounds.some(heard) ? { sounds } : nothing();
}

function movedFrom(first: HeardBurst | undefined, again: HeardBurst, delay: number): boolean {
  return first?.channel === again.channel && hasMoved(first, again, delay);
}

/** One burst, when the path's delay is `delay` seconds; null: that cannot be told. */
function readBurst(burst: HeardBurst, delay: number | null): WalkSound {
  const { channel } = burst;
  const silent = {
    channel,
    levelDb: null,
    lowDb: null,
    arrivalSeconds: null,
    polarity: 'cannot tell',
  } as const;
  if (delay === null) return silent;
  const early = before(burst, delay);
  const long = responseAround(burst, delay, 0.1, 0.35);
  const lowDb = levelIn(long, [burst.noise, early], 'low');
  const ir = responseAround(burst, delay, 0.05, 0.2);
  const middleDb = levelIn(ir, [burst.noise, early], 'middle');
  const clear =
    amplitudeToDb(largestMagnitude(ir.samples)) - powerToDb(meanSquare(early.samples)) >=
    leastPeakDb;
  const levelDb = clear ? middleDb : null;
  if (soundsLikeSub({ levelDb, lowDb })) {
    const onset = findArrival(long, onsetHz);
    return { ...silent, levelDb, lowDb, arrivalSeconds: onset?.seconds ?? null };
  }
  const arrival = levelDb === null ? null : findArrival(ir, arrivalHz);
  if (!arrival || arrival.bandAdapted) return { ...silent, levelDb, lowDb };
  const { polarity } = readPolarity(ir, arrival);
  return { channel, levelDb, lowDb, arrivalSeconds: arrival.seconds, polarity };
}

/** Level of a response in a band without the noise's share; null where it is not clear of it. */
function levelIn(
  ir: ImpulseResponse,
  noises: readonly ImpulseResponse[],
  band: keyof typeof levelHz,
): number | null {
  const [lowHz, highHz] = levelHz[band];
  const heard = bandPower(powerSpectrum(ir), lowHz, highHz);
  const powers = noises.map((noise) => {
    const share = ir.samples.length / Math.max(1, noise.samples.length);
    return bandPower(powerSpectrum(noise), lowHz, highHz) * share;
  });
  const own = Math.max(...powers);
  const clear = powerToDb(heard) - powerToDb(own) >= leastMarginDb[band];
  return clear ? powerToDb(heard - own) : null;
}

/** A burst's response from a little before the common delay to the end of its echo. */
function responseAround(
  { response }: HeardBurst,
  delay: number,
  beforeSeconds: number,
  afterSeconds: number,
): ImpulseResponse {
  const { samples, sampleRate, zeroIndex } = response;
  const at = zeroIndex + Math.round(delay * sampleRate);
  const from = Math.max(0, at - Math.round(beforeSeconds * sampleRate));
  const to = Math.min(samples.length, at + Math.round(afterSeconds * sampleRate));
  return { samples: samples.slice(from, to), sampleRate, zeroIndex: zeroIndex - from };
}

/** What the same deconvolution gives before anything of the burst can have arrived. */
function before({ response }: HeardBurst, delay: number): ImpulseResponse {
  const { samples, sampleRate, zeroIndex } = response;
  const end = zeroIndex + Math.round((delay - 0.01) * sampleRate);
  const from = Math.max(0, end - Math.round(0.14 * sampleRate));
  return { samples: samples.slice(from, end), sampleRate, zeroIndex: zeroIndex - from };
}

const lost = () =>
  trouble(
    'failed',
    msg('The recorder lost audio at this stop. Stay where you are and play it again.'),
  );
const clipped = () =>
  trouble(
    'too-loud',
    msg(
      'The microphone clipped at this stop. Lower the level, or hold it a little farther from the speaker, and play it again.',
    ),
  );
const nothing = () =>
  trouble(
    'silence',
    msg(
      'Nothing of this stop was heard. Check that the amplifiers are on and that the microphone is the one in your hand, then play it again.',
    ),
  );
