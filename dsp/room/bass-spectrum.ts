import { realSpectrum } from '../fft/fft';
import { bandHz, bassBands, bassShare, bassWeights } from './bands';
import { bandDecay } from './decay';
import type { Point } from './point';
import { soundSpeed, type Room } from './room';
import { roomImages, type RoomImages } from './room-images';

/** Images are laid down on a grid at least this fine, Hz, shared between the two nearest samples. */
const leastGridHz = 9600;
/** Images weaker than this by their reflections alone are left out. */
const weakest = 2e-4;

/**
 * Adds the bass (all bands below 500 Hz) of the way from source to microphone to the half spectrum
 * of `size` samples at `sampleRate`: every image source, one walk of the lattice for all bass
 * bands, which are split by causal filters. Sharing between two samples of the grid costs at most 0.02 dB at 250 Hz. Radiation is
 * taken as equal in all directions. Images are dropped once the slowest bass band has decayed by
 * `fallDb`: 35 dB are enough where only levels count.
 */
export function addBass(
  spectrum: Float64Array,
  size: number,
  sampleRate: number,
  room: Room,
  source: Point,
  microphone: Point,
  fallDb = 52,
): void {
  let ratio = 1;
  while (sampleRate * ratio < leastGridHz) ratio *= 2;
  while (sampleRate * ratio >= 2 * leastGridHz) ratio /= 2;
  const gridSize = size * ratio;
  const gridRate = sampleRate * ratio;
  const c = soundSpeed(room);
  const decays = Array.from({ length: bassBands }, (_, band) =>
    bandDecay(room, band).timeOfFall(fallDb),
  );
  const end = Math.min((gridSize - 2) / gridRate, Math.max(0.3, ...decays));
  const images = roomImages(room, source, microphone, c * end);
  const laid = layImages(images, gridRate / c, c * end, gridSize);
  const spectra = Array.from({ length: bassBands }, (_, band) => {
    const own = new Float64Array(gridSize);
    for (let n = 0; n < gridSize; n++) own[n] = laid[n * bassBands + band] ?? 0;
    return realSpectrum(own, gridSize);
  });
  for (const [band, own] of spectra.entries()) {
    const weights = weightsOf(sampleRate / size)[band] ?? own;
    const length = Math.min(spectrum.length, weights.length);
    for (let k = 0; k < length; k += 2) {
      const [a, b] = [own[k] ?? 0, own[k + 1] ?? 0];
      const [c, d] = [weights[k] ?? 0, weights[k + 1] ?? 0];
      spectrum[k] = (spectrum[k] ?? 0) + (a * c - b * d);
      spectrum[k + 1] = (spectrum[k + 1] ?? 0) + (a * d + b * c);
    }
  }
}

const knownWeights = new Map<number, readonly Float64Array[]>();

/** Complex weight of each bass band at the bins up to the end of the bass, interleaved. */
function weightsOf(binHz: number): readonly Float64Array[] {
  const known = knownWeights.get(binHz);
  if (known) return known;
  let bins = 0;
  while (bassShare(bins * binHz) > 0) bins++;
  const made = Array.from({ length: bassBands }, () => new Float64Array(2 * bins));
  for (let k = 0; k < bins; k++) {
    const share = bassShare(k * binHz);
    for (const [band, [re, im]] of bassWeights(k * binHz).entries()) {
      made[band]?.set([share * re, share * im], 2 * k);
    }
  }
  knownWeights.set(binHz, made);
  return made;
}

/** Walks the lattice; the last eighth of the reach fades out. Bands lie interleaved. */
function layImages(
  { x, y, z }: RoomImages,
  samplesPerMetre: number,
  reach: number,
  size: number,
): Float64Array {
  const laid = new Float64Array(size * bassBands);
  const bands = bandHz.length;
  const fadeFrom = reach * 0.875;
  const fadePerMetre = 1 / (reach - fadeFrom);
  const most = reach * reach;
  const [across, gains, count] = [z.offset, z.gains, z.count];
  for (let i = 0; i < x.count; i++) {
    const dx = x.offset[i] ?? 0;
    for (let j = 0; j < y.count; j++) {
      const dy = y.offset[j] ?? 0;
      const flat = dx * dx + dy * dy;
      if (flat > most) break;
      const [a, b] = [i * bands, j * bands];
      const p0 = (x.gains[a] ?? 0) * (y.gains[b] ?? 0);
      const p1 = (x.gains[a + 1] ?? 0) * (y.gains[b + 1] ?? 0);
      const p2 = (x.gains[a + 2] ?? 0) * (y.gains[b + 2] ?? 0);
      const p3 = (x.gains[a + 3] ?? 0) * (y.gains[b + 3] ?? 0);
      for (let k = 0; k < count; k++) {
        const dz = across[k] ?? 0;
        const square = flat + dz * dz;
        if (square > most) break;
        const c = k * bands;
        const g0 = p0 * (gains[c] ?? 0);
        const g1 = p1 * (gains[c + 1] ?? 0);
        const g2 = p2 * (gains[c + 2] ?? 0);
        const g3 = p3 * (gains[c + 3] ?? 0);
        if (g0 < weakest && g1 < weakest && g2 < weakest && g3 < weakest) continue;
        const distance = Math.max(Math.sqrt(square), 0.01);
        const fade = distance > fadeFrom ? (reach - distance) * fadePerMetre : 1;
        const place = distance * samplesPerMetre;
        const whole = place | 0;
        const both = fade / distance;
        const after = (place - whole) * both;
        const before = both - after;
        const at = whole * bassBands;
        laid[at] = (laid[at] ?? 0) + g0 * before;
        laid[at + 1] = (laid[at + 1] ?? 0) + g1 * before;
        laid[at + 2] = (laid[at + 2] ?? 0) + g2 * before;
        laid[at + 3] = (laid[at + 3] ?? 0) + g3 * before;
        laid[at + 4] = (laid[at + 4] ?? 0) + g0 * after;
        laid[at + 5] = (laid[at + 5] ?? 0) + g1 * after;
        laid[at + 6] = (laid[at + 6] ?? 0) + g2 * after;
        laid[at + 7] = (laid[at + 7] ?? 0) + g3 * after;
      }
    }
  }
  return laid;
}
