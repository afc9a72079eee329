import { boxResponse } from './box';
import { magnitude } from './section';
import type { SpeakerModel } from './speaker';
import { passbandResponses, speakerResponse, speakerResponses } from './speaker-response';

/** What a perfect instrument would say of a speaker. */
export interface SpeakerTruth {
  readonly f3Hz: number;
  readonly f6Hz: number;
  readonly f10Hz: number;
  readonly box: 'sealed' | 'vented';
  readonly inverted: boolean;
}

/**
 * Roll-off of a speaker's own free-field response, box and protection and ripple and tilt together:
 * the highest frequency at which it lies 3.01 (6.02, 10) dB below its passband level. That level
 * is the power mean of the response without box and protection over `passbandHz`.
 */
export function truthOf(
  speaker: SpeakerModel,
  passbandHz: readonly [number, number] = [180, 500],
): SpeakerTruth {
  const passbandDb = passbandLevelDb(speaker, passbandHz);
  const response = speakerResponses(speaker);
  const level = (hz: number): number =>
    20 * Math.log10(magnitude(response(hz))) - speaker.gainDb - passbandDb;
  const start = Math.max(passbandHz[0], 4 * speaker.box.resonanceHz);
  const half = 10 * Math.log10(2);
  return {
    f3Hz: highestCrossing(level, -half, start),
    f6Hz: highestCrossing(level, -2 * half, start),
    f10Hz: highestCrossing(level, -10, start),
    box: speaker.box.kind,
    inverted: speaker.inverted,
  };
}

/** Level at hz of the speaker's free-field response re its passband, dB; see truthOf. */
export function anechoicDb(
  speaker: SpeakerModel,
  hz: number,
  passbandHz: readonly [number, number] = [180, 500],
): number {
  const size = magnitude(speakerResponse(speaker, hz));
  return 20 * Math.log10(size) - speaker.gainDb - passbandLevelDb(speaker, passbandHz);
}

/** Highest −3.01 dB frequency of the box alone, Hz. */
export function boxCutoffHz(box: SpeakerModel['box']): number {
  const level = (hz: number): number => 20 * Math.log10(magnitude(boxResponse(box, hz)));
  return highestCrossing(level, -10 * Math.log10(2), 8 * box.resonanceHz);
}

function passbandLevelDb(speaker: SpeakerModel, [low, high]: readonly [number, number]): number {
  const steps = 200;
  const response = passbandResponses(speaker);
  let power = 0;
  for (let i = 0; i < steps; i++) {
    const hz = low * (high / low) ** ((i + 0.5) / steps);
    power += magnitude(response(hz)) ** 2;
  }
  return 10 * Math.log10(power / steps);
}

/** Walks down in steps of 1/200 octave to the first level below `target`, then halves the step. */
function highestCrossing(level: (hz: number) => number, target: number, startHz: number): number {
  const step = 2 ** (1 / 200);
  let high = startHz;
  while (level(high) < target) high *= step;
  let low = high / step;
  while (level(low) >= target) {
    high = low;
    low /= step;
    if (low < 0.1) throw new RangeError(`no crossing of ${target} dB below ${startHz} Hz`);
  }
  for (let i = 0; i < 40; i++) {
    const middle = Math.sqrt(low * high);
    if (level(middle) >= target) high = middle;
    else low = middle;
  }
  return high;
}
