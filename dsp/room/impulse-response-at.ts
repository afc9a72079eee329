import { nextPowerOfTwo, realSignal } from '../fft/fft';
import { addBass } from './bass-spectrum';
import type { Point } from './point';
import type { Room } from './room';
import { requireInside } from './room-images';
import type { Speaker } from './speaker';
import { speakerResponses } from './speaker-response';
import { addUpper } from './upper-spectrum';

/**
 * Pressure at the microphone after a unit sample into the speaker: sample 0 is the moment of
 * emission, so the way through the air is part of it. Length: the power of two of samples that
 * holds `seconds`. A rate of 1200 Hz or more works; at a low rate only the bass is computed, which
 * is exact below 250 Hz. `fallDb`: see addBass. Throws RangeError for a place outside the room or a lower rate.
 * Source: image sources, Allen and Berkley, JASA 1979.
 */
export function impulseResponseAt(
  room: Room,
  speaker: Speaker,
  microphone: Point,
  sampleRate: number,
  seconds = 1.3,
  fallDb?: number,
): Float64Array {
  if (!(sampleRate >= 1200)) throw new RangeError(`sampleRate must be ≥ 1200, got ${sampleRate}`);
  requireInside(room, 'speaker', speaker.position);
  requireInside(room, 'microphone', microphone);
  const size = nextPowerOfTwo(Math.ceil(seconds * sampleRate));
  const spectrum = new Float64Array(size + 2);
  addBass(spectrum, size, sampleRate, room, speaker.position, microphone, fallDb);
  addUpper(spectrum, size, sampleRate, room, speaker, microphone);
  applySpeaker(spectrum, sampleRate / size, speaker);
  const response = realSignal(spectrum, size);
  // What band limits ring ahead of a microphone close by comes round to the end: nobody hears it
  // there. In its place stands what a response without its share at 0 Hz ends beside, which is the
  // mean of its last part; the last sample alone would hold on to a mode in mid-swing.
  const end = size - Math.round(size * wrappedShare);
  const restFrom = Math.round(size * (1 - restShare));
  let sum = 0;
  for (let n = restFrom; n < end; n++) sum += response[n] ?? 0;
  response.fill(sum / (end - restFrom), end);
  return response;
}

const wrappedShare = 1 / 256;
/** So much of the end holds a swing or more of the lowest modes, and little of what falls slowly. */
const restShare = 1 / 16;

/** spectrum ← spectrum · H(f) e^(−2πi f delay); the last bin becomes real. */
function applySpeaker(spectrum: Float64Array, binHz: number, speaker: Speaker): void {
  const last = spectrum.length / 2 - 1;
  const response = speakerResponses(speaker);
  for (let k = 0; k <= last; k++) {
    const [a, b] = response(k * binHz);
    const turn = -2 * Math.PI * k * binHz * speaker.delaySeconds;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const re = a * cos - b * sin;
    const im = a * sin + b * cos;
    const x = spectrum[2 * k] ?? 0;
    const y = spectrum[2 * k + 1] ?? 0;
    spectrum[2 * k] = x * re - y * im;
    spectrum[2 * k + 1] = k === last ? 0 : x * im + y * re;
  }
}
