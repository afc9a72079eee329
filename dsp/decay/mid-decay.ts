import type { DecayBand } from './decay-band';
import { untold, type DecayTime } from './decay-time';

/** Decay times of the middle: means of the octaves of 500 Hz and 1 kHz. */
export interface MidDecay {
  readonly edt: DecayTime;
  readonly t20: DecayTime;
  readonly t30: DecayTime;
}

const names = ['500 Hz', '1 kHz'] as const;

/**
 * Mean of the decay times at 500 Hz and 1 kHz; told when both are, trusted when both are. The two
 * bands err independently. Source: ISO 3382-1:2009, single-number quantities (from memory).
 */
export function readMidDecay(bands: readonly DecayBand[]): MidDecay {
  const [low, high] = names.map((name) => bands.find((band) => band.name === name));
  return {
    edt: meanOf(low?.edt, high?.edt),
    t20: meanOf(low?.t20, high?.t20),
    t30: meanOf(low?.t30, high?.t30),
  };
}

function meanOf(a: DecayTime | undefined, b: DecayTime | undefined): DecayTime {
  if (!a || !b) return untold('The bands of 500 Hz and 1 kHz were not both read. Read them too.');
  if (a.seconds === null || b.seconds === null || !a.interval || !b.interval) {
    return untold(
      (a.seconds === null ? a.sentence : b.sentence) ?? 'One of the bands has no time.',
    );
  }
  const sum = a.seconds + b.seconds;
  const share = Math.hypot(a.seconds * logHalf(a.interval), b.seconds * logHalf(b.interval)) / sum;
  const seconds = sum / 2;
  return {
    seconds,
    interval: [seconds * Math.exp(-share), seconds * Math.exp(share)],
    nonLinearity: Math.max(a.nonLinearity ?? 0, b.nonLinearity ?? 0),
    trusted: a.trusted && b.trusted,
    sentence: a.sentence ?? b.sentence,
  };
}

/** Half of an interval on the log axis. */
function logHalf([low, high]: readonly [number, number]): number {
  return Math.log(high / low) / 2;
}
