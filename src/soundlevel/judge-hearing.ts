import { bandEdges, bandMidpoints } from '../../dsp/level/bands';
import { powerToDb } from '../../dsp/level/decibels';
import type { Hearing } from './climb-ear';
import type { ClimbNoise } from './climb-noise';
import type { NoiseFloor } from './noise-floor';

/** What is heard of the speaker, its noise floor taken out. */
export interface Judged {
  /** Power of the speaker in the deciding band; 0 when it is not heard. */
  readonly power: number;
  /** Over the noise floor in the deciding band, dB; null when it is not heard. */
  readonly marginDb: number | null;
  /** The noise is there, but the level is that of the silence: gain control holds it. */
  readonly isHeld: boolean;
  readonly cWeightedDb: number;
  /** Highest peak to expect: of this noise or of a sweep at the same gain, dB re full scale. */
  readonly peakDb: number;
}

/** Heard is what doubles the noise floor … */
const leastRise = 2;
/** … and at least half of which comes again with every period. */
const leastRepeated = 0.5;
/** A speaker as loud as the noise floor repeats half of what is heard. */
const mostlyRepeated = 0.7;
/** A sweep swings in to what a band so narrow lets through. */
const bandsPerOctave = 12;
/** Peak of a take's sweep at gain 0 dB, dB re full scale. */
const sweepPeakDb = -12;

/**
 * Tells the speaker's share of what is heard. Something loud that does not repeat with the noise's
 * period (a truck, a voice) is not taken for the speaker.
 */
export function judgeHearing(
  hearing: Hearing,
  floor: NoiseFloor,
  noise: ClimbNoise,
  sampleRate: number,
): Judged {
  const excess = hearing.bandPower - floor.bandPower;
  const rises = hearing.bandPower >= leastRise * floor.bandPower;
  const isHeard = rises && hearing.repeatedPower >= leastRepeated * excess;
  const { cWeightedDb } = hearing;
  if (!isHeard) {
    const isHeld = !rises && isRepeated(hearing) && !isRepeated(floor);
    return { power: 0, marginDb: null, isHeld, cWeightedDb, peakDb: hearing.peakDb };
  }
  const response = loudestBand(hearing, floor, noise, sampleRate);
  return {
    power: excess,
    marginDb: powerToDb(excess / floor.bandPower),
    isHeld: false,
    cWeightedDb,
    peakDb: Math.max(hearing.peakDb, sweepPeakDb + powerToDb(response)),
  };
}

/** Whether most of what is heard comes again with every period. */
export function isRepeated(heard: {
  readonly bandPower: number;
  readonly repeatedPower: number;
}): boolean {
  return heard.repeatedPower >= mostlyRepeated * heard.bandPower;
}

/**
 * Largest |H|² in a twelfth of an octave, gain included: how much louder a sweep can come back.
 * Bands that do not double the noise floor count for nothing.
 */
function loudestBand(
  hearing: Hearing,
  floor: NoiseFloor,
  noise: ClimbNoise,
  sampleRate: number,
): number {
  const hzPerBin = sampleRate / noise.period.length;
  let loudest = 0;
  for (const mid of bandMidpoints(noise.lowHz * 1.2, noise.highHz / 1.2, bandsPerOctave)) {
    const [low, high] = bandEdges(mid, bandsPerOctave);
    let heard = 0;
    let silent = 0;
    let played = 0;
    for (let k = Math.ceil(low / hzPerBin); k <= Math.floor(high / hzPerBin); k++) {
      heard += hearing.spectrum[k] ?? 0;
      silent += floor.spectrum[k] ?? 0;
      played += noise.power[k] ?? 0;
    }
    if (heard > leastRise * silent && played > 0) {
      loudest = Math.max(loudest, (heard - silent) / played);
    }
  }
  return loudest;
}
