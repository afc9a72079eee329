import { realSignal, realSpectrum } from '../../../dsp/fft/fft';
import type { RoomSpec, SpeakerSpec } from './room-spec';
import { multiply, speakerResponse } from './speaker-response';
import { soundSpeed } from './sound-speed';

/** Length of a response: a power of two; 0.34 s at 48 kHz is kept of it. */
const transformSize = 2 ** 15;
export const responseLength = transformSize / 2;
const sincHalfWidth = 16;
/** Samples before time zero that the fractional delays need; the whole room is late by them. */
const leadSamples = sincHalfWidth;

/**
 * Impulse response from one speaker to the microphone: image sources of a shoebox (Allen and
 * Berkley 1979), each put at its fractional sample, summed by how often they were reflected;
 * every reflection filters once more; then the speaker's own response on top.
 */
export function roomResponse(room: RoomSpec, speaker: SpeakerSpec): Float64Array {
  const byReflections = imageSums(room, speaker);
  const sum = new Float64Array(transformSize + 2);
  for (const [count, impulses] of byReflections.entries()) {
    const spectrum = realSpectrum(impulses, transformSize);
    for (let k = 0; k <= transformSize / 2; k++) {
      const reflectance = reflectanceAt(room, binHz(room, k)) ** count;
      sum[2 * k] = (sum[2 * k] ?? 0) + reflectance * (spectrum[2 * k] ?? 0);
      sum[2 * k + 1] = (sum[2 * k + 1] ?? 0) + reflectance * (spectrum[2 * k + 1] ?? 0);
    }
  }
  for (let k = 0; k <= transformSize / 2; k++) {
    const own = speakerResponse(speaker, binHz(room, k));
    const heard = multiply([sum[2 * k] ?? 0, sum[2 * k + 1] ?? 0], own);
    [sum[2 * k], sum[2 * k + 1]] = heard;
  }
  const fade = responseLength / 8;
  return realSignal(sum, transformSize)
    .slice(0, responseLength)
    .map((value, n) => value * Math.min(1, (responseLength - n) / fade));
}

function binHz(room: RoomSpec, bin: number): number {
  return (bin * room.sampleRate) / transformSize;
}

/** Falls smoothly from the low to the high value around 1 kHz. */
function reflectanceAt({ reflectance: [low, high] }: RoomSpec, hz: number): number {
  return high + (low - high) / (1 + (hz / 1000) ** 2);
}

/** Impulse trains of all image sources within the response's length, by number of reflections. */
function imageSums(room: RoomSpec, speaker: SpeakerSpec): Float64Array[] {
  const speed = soundSpeed(room.celsius);
  const gain =
    10 ** ((room.gainDb + (speaker.gainDb ?? 0)) / 20) * (speaker.inverted === true ? -1 : 1);
  const ownDelay = (speaker.delaySeconds ?? 0) * room.sampleRate + leadSamples;
  const [alongX, alongY, alongZ] = [0, 1, 2].map((axis) => imagesAlong(room, speaker, axis));
  const sums: Float64Array[] = [];
  for (const x of alongX ?? []) {
    for (const y of alongY ?? []) {
      for (const z of alongZ ?? []) {
        const metres = Math.hypot(x.offset, y.offset, z.offset);
        const at = (metres / speed) * room.sampleRate + ownDelay;
        if (at > responseLength) continue;
        const count = x.reflections + y.reflections + z.reflections;
        while (sums.length <= count) sums.push(new Float64Array(transformSize));
        const impulses = sums[count];
        if (impulses) addImpulse(impulses, at, gain / metres);
      }
    }
  }
  return sums;
}

/** Where the images stand along one axis, seen from the microphone, and how often reflected. */
function imagesAlong(room: RoomSpec, speaker: SpeakerSpec, axis: number) {
  const size = room.size[axis] ?? 1;
  const source = speaker.position[axis] ?? 0;
  const microphone = room.microphone[axis] ?? 0;
  const farthest = (responseLength / room.sampleRate) * soundSpeed(room.celsius);
  const order = Math.ceil(farthest / (2 * size)) + 1;
  const images: { offset: number; reflections: number }[] = [];
  for (let n = -order; n <= order; n++) {
    images.push({ offset: 2 * n * size + source - microphone, reflections: Math.abs(2 * n) });
    images.push({ offset: 2 * n * size - source - microphone, reflections: Math.abs(2 * n - 1) });
  }
  return images;
}

/** Adds a band-limited impulse (sinc under a Hann window) at a fractional sample. */
function addImpulse(into: Float64Array, at: number, height: number): void {
  const centre = Math.round(at);
  for (let n = centre - sincHalfWidth + 1; n < centre + sincHalfWidth; n++) {
    if (n < 0) continue;
    const t = n - at;
    const sinc = t === 0 ? 1 : Math.sin(Math.PI * t) / (Math.PI * t);
    into[n] =
      (into[n] ?? 0) + height * sinc * (0.5 + 0.5 * Math.cos((Math.PI * t) / sincHalfWidth));
  }
}
