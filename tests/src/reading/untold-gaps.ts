import type { ImpulseResponse } from '../../../dsp/response/impulse-response';
import { gaussian, seededRandom } from '../../../dsp/signal/random';
import { untoldOf, type UntoldNumber } from '../../../src/reading/untold';
import type { ChannelReading } from '../../../src/reading/reading';

const rate = 48000;

/** What a person can be asked to do, one thing at a time. */
export const action =
  /\b(Repeat|repeat (it|this)|More level would|longer sweep would|close to the (driver|speaker|sub) would|loopback would|Start the recording|Set it to|set it together|Type what|Leave all volumes|Use sweeps|Take it with|Measure it alone|Check its|Average four|Use a sweep)\b/;

/** Every field of a reading that may be empty, and what it is called when it is. */
const numbers: Readonly<Partial<Record<keyof ChannelReading, UntoldNumber>>> = {
  arrivalSeconds: 'arrival',
  arrivalInterval: 'arrival',
  distanceMetres: 'distance',
  distanceInterval: 'distance',
  levelDb: 'level',
  levelInterval: 'level',
  polarity: 'polarity',
  rolloff: 'roll-off',
  bassMarginDb: 'bass margin',
  peakToNoiseDb: 'peak to noise',
  decaySeconds: 'decay',
};
/**
 * Empty where there is nothing to tell: no path over the ceiling, nothing to draw, no noise; and the
 * bass that sums are made of, of which the proposal says what it lacks.
 */
const mayBeEmpty: readonly (keyof ChannelReading)[] = [
  'ceilingPathMetres',
  'curves',
  'margins',
  'bass',
];

/** Fields that are empty without a sentence that asks for one thing; none should be. */
export function silentGaps(reading: ChannelReading): string[] {
  const told = untoldOf(reading);
  const hasAction = (what: UntoldNumber): boolean =>
    told.some((one) => one.what === what && action.test(one.sentence));
  const fields = Object.entries(reading) as [keyof ChannelReading, unknown][];
  const empty = fields.flatMap(([field, value]) => {
    const isEmpty = value === null || value === 'cannot tell';
    if (!isEmpty || mayBeEmpty.includes(field)) return [];
    const what = numbers[field];
    return what && hasAction(what) ? [] : [field];
  });
  const box = reading.rolloff?.box.kind === 'cannot tell' && !hasAction('box') ? ['box'] : [];
  const distortion =
    reading.distortion?.kind !== 'curves' && !hasAction('distortion') ? ['distortion'] : [];
  const timed = reading.distanceMetres !== null || !reading.channel.startsWith('Tp');
  const ceiling = timed || hasAction('ceiling path') ? [] : ['ceilingPathMetres'];
  return [...empty, ...box, ...distortion, ...ceiling];
}

/** A click with a tail of noise that falls by 60 dB in half a second, at a level. */
export function click(level: number, hiss: number, seed: number): ImpulseResponse {
  const normal = gaussian(seededRandom(seed));
  const zeroIndex = Math.round(0.17 * rate);
  const samples = Float64Array.from({ length: Math.round(1.53 * rate) }, (_, n) => {
    const after = n - zeroIndex - 300;
    const tail = after > 0 ? 0.03 * normal() * 10 ** ((-3 * after) / (0.5 * rate)) : 0;
    return level * ((after === 0 ? 1 : 0) + tail) + hiss * normal();
  });
  return { samples, sampleRate: rate, zeroIndex };
}

/** What a sub gives: a burst at 50 Hz. */
export function thud(hiss: number, seed: number): ImpulseResponse {
  const quiet = click(0, hiss, seed);
  const samples = quiet.samples.map((value, n) => {
    const seconds = Math.max(0, n - quiet.zeroIndex - 300) / rate;
    const swell = (1 - Math.exp(-seconds / 0.01)) ** 3 * Math.exp(-seconds / 0.03);
    return value + 0.05 * swell * Math.sin(2 * Math.PI * 50 * seconds);
  });
  return { ...quiet, samples };
}

/** Noise as it went through the same path. */
export const noiseAt = (hiss: number): ImpulseResponse => click(0, hiss, 77);
