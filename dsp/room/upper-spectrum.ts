import { realSpectrum } from '../fft/fft';
import { gaussian, seededRandom } from '../signal/random';
import { airDbPerMetre, bandHz, bandWeight, bassBands } from './bands';
import { bandDecay } from './decay';
import { diffusePower, directivityGains, type Directivity } from './directivity';
import { impulseTaps } from './fractional-delay';
import { distanceBetween, type Point } from './point';
import { soundSpeed, type Room } from './room';
import { roomImages } from './room-images';

const taps = 64;
/** Images up to here, diffuse tail from there, seconds; both crossfade in power in between. */
const mixStart = 0.06;
const mixEnd = 0.09;
/** The tail's level is computed this often, seconds, and drawn straight in between. */
const stepSeconds = 0.005;
/** The tail ends where it has become weaker than this, re 1 at 1 m. */
const weakest = 1e-7;

/**
 * Adds all bands from 250 Hz up to the half spectrum: image sources with the speaker's beam up to
 * 90 ms, from 60 ms on a diffuse tail with the energy the images would have gone on with.
 */
export function addUpper(
  spectrum: Float64Array,
  size: number,
  sampleRate: number,
  room: Room,
  source: { readonly position: Point; readonly aim: Point; readonly directivity: Directivity },
  microphone: Point,
): void {
  const bands = bandHz.map((hz, band) =>
    band >= bassBands && hz / 2 < sampleRate / 2 ? new Float64Array(size) : null,
  );
  layEarly(bands, sampleRate, room, source, microphone);
  layTail(bands, size, sampleRate, room, source, microphone);
  for (const [band, signal] of bands.entries()) {
    if (signal) addBand(spectrum, realSpectrum(signal, size), band, sampleRate / size);
  }
}

/** Adds a band's spectrum under that band's weight. */
function addBand(into: Float64Array, from: Float64Array, band: number, binHz: number): void {
  const lowest = (bandHz[band] ?? 0) / 2;
  const highest = band === bandHz.length - 1 ? Infinity : 4 * lowest;
  const last = into.length / 2 - 1;
  for (let k = Math.ceil(lowest / binHz); k <= last && k * binHz < highest; k++) {
    const weight = bandWeight(k * binHz, band);
    into[2 * k] = (into[2 * k] ?? 0) + weight * (from[2 * k] ?? 0);
    into[2 * k + 1] = (into[2 * k + 1] ?? 0) + weight * (from[2 * k + 1] ?? 0);
  }
}

function layEarly(
  bands: (Float64Array | null)[],
  sampleRate: number,
  room: Room,
  source: Parameters<typeof addUpper>[4],
  microphone: Point,
): void {
  const c = soundSpeed(room);
  const reach = c * mixEnd;
  const { x, y, z } = roomImages(room, source.position, microphone, reach);
  const { aim, directivity } = source;
  const count = bandHz.length;
  const kernel = new Float64Array(taps);
  const beam = directivityGains(directivity);
  const airPerMetre = airDbPerMetre.map((db) => (-db * Math.LN10) / 20);
  for (let i = 0; i < x.count; i++) {
    const dx = x.offset[i] ?? 0;
    for (let j = 0; j < y.count; j++) {
      const dy = y.offset[j] ?? 0;
      if (dx * dx + dy * dy > reach * reach) break;
      for (let k = 0; k < z.count; k++) {
        const dz = z.offset[k] ?? 0;
        const distance = Math.max(Math.hypot(dx, dy, dz), 0.01);
        if (distance > reach) break;
        // The image radiates towards the microphone; its mirror gives the true speaker's direction.
        const cosine =
          -(
            dx * (x.flip[i] ?? 1) * aim.x +
            dy * (y.flip[j] ?? 1) * aim.y +
            dz * (z.flip[k] ?? 1) * aim.z
          ) / distance;
        const fade = earlyFade(distance / c) / distance;
        const place = (distance / c) * sampleRate;
        const whole = Math.floor(place);
        impulseTaps(place - whole, taps, kernel);
        for (let band = bassBands; band < count; band++) {
          const signal = bands[band];
          if (!signal) continue;
          const air = Math.exp((airPerMetre[band] ?? 0) * distance);
          const walls =
            (x.gains[i * count + band] ?? 0) *
            (y.gains[j * count + band] ?? 0) *
            (z.gains[k * count + band] ?? 0);
          const gain = fade * walls * air * beam(cosine, bandHz[band] ?? 0);
          addKernel(signal, whole - taps / 2 + 1, kernel, gain);
        }
      }
    }
  }
}

function layTail(
  bands: (Float64Array | null)[],
  size: number,
  sampleRate: number,
  room: Room,
  source: Parameters<typeof addUpper>[4],
  microphone: Point,
): void {
  const { position, directivity } = source;
  const place = distanceBetween(position, microphone) * 7919 + position.x * 104729 + microphone.x;
  const noise = gaussian(seededRandom(room.seed + place));
  const power = diffusePower(directivity);
  const decays = bandHz.map((_, band) => bandDecay(room, band));
  const first = Math.floor(mixStart * sampleRate);
  const step = Math.max(1, Math.round(sampleRate * stepSeconds));
  const energies = decays.map((one) => one.energiesFrom(first / sampleRate, step / sampleRate));
  const levels = (at: number): number[] => {
    const steps = (at - first) / step;
    return bands.map((signal, band) => {
      if (!signal) return 0;
      const reflected = Number.isInteger(steps)
        ? energies[band]?.(steps)
        : decays[band]?.energyAt(at / sampleRate);
      const energy = ((reflected ?? 0) * (power[band] ?? 0)) / sampleRate;
      return tailFade(at / sampleRate) * Math.sqrt(energy);
    });
  };
  let before = levels(first);
  for (let n = first; n < size;) {
    const end = Math.min(n + step, size);
    const after = levels(end);
    if (n > mixEnd * sampleRate && Math.max(...before) < weakest) break;
    const white = new Float64Array(end - n);
    for (let m = 0; m < white.length; m++) white[m] = noise();
    for (const [band, signal] of bands.entries()) {
      if (!signal) continue;
      const start = before[band] ?? 0;
      const slope = ((after[band] ?? 0) - start) / (end - n);
      for (let m = n; m < end; m++) {
        signal[m] = (signal[m] ?? 0) + (white[m - n] ?? 0) * (start + slope * (m - n));
      }
    }
    before = after;
    n = end;
  }
}

/** Adds it from `first` on; what lies outside wraps round, as in a circular transform. */
function addKernel(into: Float64Array, first: number, kernel: Float64Array, gain: number): void {
  const size = into.length;
  if (first >= 0 && first + kernel.length <= size) {
    for (let k = 0; k < kernel.length; k++) {
      into[first + k] = (into[first + k] ?? 0) + gain * (kernel[k] ?? 0);
    }
    return;
  }
  for (let k = 0; k < kernel.length; k++) {
    const at = (((first + k) % size) + size) % size;
    into[at] = (into[at] ?? 0) + gain * (kernel[k] ?? 0);
  }
}

function earlyFade(seconds: number): number {
  return Math.cos((Math.PI / 2) * mixPlace(seconds));
}

function tailFade(seconds: number): number {
  return Math.sin((Math.PI / 2) * mixPlace(seconds));
}

function mixPlace(seconds: number): number {
  return Math.min(Math.max((seconds - mixStart) / (mixEnd - mixStart), 0), 1);
}
