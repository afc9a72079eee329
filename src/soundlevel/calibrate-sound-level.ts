import { numberText } from '../locale/number-text';
import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { amplitudeToDb, powerToDb } from '../../dsp/level/decibels';
import { createFrequencyWeighting } from '../../dsp/level/frequency-weighting';
import { meanSquare } from '../../dsp/level/mean-square';
import { findClipping } from '../../dsp/timing/clipping';
import type { SoundLevelCalibration } from '../microphone/calibration';
import type { Rig } from '../rig/port';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { fitSine, fitTone } from './fit-tone';
import { openEar } from './hear-line';

export interface SoundLevelRequest {
  /** What the calibrator gives or the sound level meter says, dB SPL. */
  readonly db: number;
  readonly how: SoundLevelCalibration['how'];
  readonly microphone: string;
  /** ISO 8601. */
  readonly at: string;
  readonly signal: AbortSignal;
}

/** Levels in dB re full scale that a stretch was read at, or what is wrong with it. */
type Reading = number | Trouble;

const typedDb = [30, 140] as const;
/** Sound level that full scale can stand for, generously. */
const fullScaleDb = [70, 170] as const;
const calibratorDb = [94, 114] as const;
const calibratorHz = [250, 1000] as const;
const nearDb = 1;
const nearHz = 0.03;
const stretchSeconds = { calibrator: 2, 'sound level meter': 4 } as const;
const hopSeconds = 0.5;
const settleSeconds = 1;
/** Looked for so long until a stretch is steady. */
const mostSeconds = 10;
const leastOverRestDb = 20;
const steadyToneDb = 0.2;
const steadyNoiseDb = 1.5;
const quietestDb = -80;
const clipDb = -1;
/** The crest of a tone lies this part of its amplitude high at least, or was cut off. */
const leastCrest = 0.97;
const clipping = () =>
  trouble(
    'too-loud',
    msg(
      'The microphone clips. Turn its gain down, then calibrate; do not touch the gain after that.',
    ),
  );

/**
 * Listens until what the microphone hears is steady, ten seconds at most, and ties its level to
 * dB SPL. A calibrator: a tone of 250 or 1000 Hz (within 3 %), within ±0.2 dB over 2 s, 20 dB over
 * the rest, not clipped, at about 94 or 114 dB. A sound level meter beside the microphone: steady
 * noise, read with C weighting, within ±1.5 dB over 4 s. The typed value must lie from 30 to
 * 140 dB. Nothing is played. Never throws.
 */
export async function calibrateSoundLevel(
  rig: Rig,
  request: SoundLevelRequest,
): Promise<SoundLevelCalibration | Trouble> {
  const { db, how, microphone, at, signal } = request;
  const refused = refuseTyped(db, how);
  if (refused) return refused;
  const ear = await openEar(rig, { signal });
  if (isTrouble(ear)) return ear;
  try {
    const { sampleRate } = ear.line;
    const weigh = createFrequencyWeighting(how === 'calibrator' ? 'Z' : 'C', sampleRate);
    const hop = Math.round(hopSeconds * sampleRate);
    const raw = new Float64Array(Math.round(stretchSeconds[how] / hopSeconds) * hop);
    const weighted = new Float64Array(raw.length);
    let reading: Reading = trouble('silence', msg('Nothing was heard.'));
    for (let seconds = hopSeconds; seconds <= mostSeconds; seconds += hopSeconds) {
      const heard = await ear.hear(hop);
      if (isTrouble(heard)) return heard;
      append(raw, heard);
      append(weighted, weigh(heard));
      if (seconds < settleSeconds + stretchSeconds[how]) continue;
      reading =
        checkSound(raw) ?? (how === 'calibrator' ? readTone : readNoise)(weighted, sampleRate);
      if (isTrouble(reading)) continue;
      const offsetDb = db - reading;
      return refuseOffset(offsetDb) ?? { offsetDb, how, at, microphone };
    }
    return reading;
  } finally {
    ear.close();
  }
}

function refuseTyped(db: number, how: SoundLevelCalibration['how']): Trouble | null {
  const [least, most] = typedDb;
  if (!(db >= least && db <= most)) {
    return trouble('bad-number', msg(str`The sound level must lie from ${least} to ${most} dB.`));
  }
  if (how === 'calibrator' && !calibratorDb.some((level) => Math.abs(db - level) <= nearDb)) {
    return trouble(
      'bad-number',
      msg(
        str`A calibrator gives about 94 or 114 dB, not ${withUnit(say(db), 'dB')}. Type what its certificate says, or calibrate with a sound level meter.`,
      ),
    );
  }
  return null;
}

function refuseOffset(offsetDb: number): Trouble | null {
  const [least, most] = fullScaleDb;
  if (offsetDb >= least && offsetDb <= most) return null;
  return bad(
    msg(
      str`Full scale of the microphone would be ${Math.round(offsetDb)} dB, and lies from ${least} to ${most} dB with all microphones. Check the level typed and the microphone's gain`,
    ),
  );
}

/** What no calibration may be made with. */
function checkSound(raw: Float64Array): Trouble | null {
  let peak = 0;
  let energy = 0;
  for (const x of raw) {
    peak = Math.max(peak, Math.abs(x));
    energy += x * x;
  }
  if (amplitudeToDb(peak) >= clipDb || (findClipping(raw, 0, raw.length)?.ceiling ?? 0) > 0.05) {
    return clipping();
  }
  if (powerToDb(energy / raw.length) < quietestDb) {
    return trouble(
      'silence',
      msg('The microphone hears next to nothing. Check that it is the one chosen, and its gain.'),
    );
  }
  return null;
}

function readTone(samples: Float64Array, sampleRate: number): Reading {
  const tone = fitTone(samples, sampleRate);
  const over = tone ? powerToDb(tone.power) - powerToDb(tone.rest) : 0;
  const isKnown = tone && calibratorHz.some((hz) => Math.abs(tone.hz / hz - 1) <= nearHz);
  if (!tone || !isKnown) {
    const what =
      tone && over > 0 ? msg(str`a tone of ${Math.round(tone.hz)} Hz`) : msg('no steady tone');
    return bad(
      msg(
        str`The microphone hears ${what}, not the calibrator's of 250 or 1000 Hz. Push the calibrator fully onto the microphone and switch it on`,
      ),
    );
  }
  if (halfRange(samples) < leastCrest * Math.sqrt(2 * tone.power)) return clipping();
  const swing = swingDb(samples, Math.round(0.1 * sampleRate), (part) => {
    return fitSine(part, tone.hz, sampleRate).power;
  });
  if (swing > steadyToneDb) {
    return bad(
      msg(
        str`The calibrator's tone moves by ±${withUnit(say(swing), 'dB')}. Hold calibrator and microphone still, and check its battery`,
      ),
    );
  }
  if (over < leastOverRestDb) {
    return bad(
      msg(
        str`The calibrator's tone stands only ${withUnit(say(over), 'dB')} over everything else; ${leastOverRestDb} dB are needed. Push the calibrator fully onto the microphone, and quieten the room`,
      ),
    );
  }
  return powerToDb(tone.power);
}

function readNoise(samples: Float64Array, sampleRate: number): Reading {
  const swing = swingDb(samples, Math.round(0.5 * sampleRate), meanSquare);
  if (swing > steadyNoiseDb) {
    return bad(
      msg(
        str`The sound moves by ±${withUnit(say(swing), 'dB')}. Play steady pink noise, keep quiet, and read the meter with C weighting and slow`,
      ),
    );
  }
  return powerToDb(meanSquare(samples));
}

/** Largest distance of a part's level from that of all, dB. */
function swingDb(
  samples: Float64Array,
  length: number,
  powerOf: (part: Float64Array) => number,
): number {
  const powers: number[] = [];
  for (let at = 0; at + length <= samples.length; at += length) {
    powers.push(powerOf(samples.subarray(at, at + length)));
  }
  const mean = powers.reduce((sum, power) => sum + power, 0) / powers.length;
  return Math.max(...powers.map((power) => Math.abs(powerToDb(power) - powerToDb(mean))));
}

function halfRange(samples: Float64Array): number {
  let low = 0;
  let high = 0;
  for (const x of samples) {
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return (high - low) / 2;
}

function append(past: Float64Array, heard: Float64Array): void {
  past.copyWithin(0, heard.length);
  past.set(heard, past.length - heard.length);
}

function bad(sentence: string): Trouble {
  return trouble('bad-calibration', `${sentence}.`);
}

function say(value: number): string {
  return numberText(Math.abs(value), 1);
}
