import { airDbPerMetre, bandHz } from './bands';
import { roomVolume, soundSpeed, type Room } from './room';

/**
 * Mean energy of the reflections of a unit source (1 at 1 m), per second at `seconds`, per band:
 * (4πc/V)·⟨exp(−c t Σ_i |u_i|/L_i · ½ ln(1/((1 − α_i0)(1 − α_i1))))⟩ over directions u, times the
 * loss in air. It is the density of the image lattice times their mean energy.
 */
export function reflectedEnergy(room: Room, seconds: number, band: number): number {
  const c = soundSpeed(room);
  const [x, y, z] = axisLoss(room, band);
  let sum = 0;
  for (const [u, v, w] of directions) {
    sum += Math.exp(-c * seconds * (u * x + v * y + w * z));
  }
  const air = 10 ** ((-(airDbPerMetre[band] ?? 0) * c * seconds) / 10);
  return ((4 * Math.PI * c) / roomVolume(room)) * (sum / directions.length) * air;
}

/** First time, s, at which the reflected energy of a band has fallen by `db`; at most `longest`. */
export function decayTime(room: Room, band: number, db: number, longest = 20): number {
  const target = reflectedEnergy(room, 0, band) * 10 ** (-db / 10);
  if (reflectedEnergy(room, longest, band) > target) return longest;
  let low = 0;
  let high = longest;
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (reflectedEnergy(room, middle, band) > target) low = middle;
    else high = middle;
  }
  return high;
}

/**
 * Reverberation time T20 of a band, s: the fall of the backward-integrated decay from −5 to
 * −25 dB, times three. Source: ISO 3382.
 */
export function reverberationTime(room: Room, band: number): number {
  const end = decayTime(room, band, 60);
  const steps = 600;
  const remaining = new Float64Array(steps + 1);
  for (let i = steps - 1; i >= 0; i--) {
    const energy = reflectedEnergy(room, ((i + 0.5) * end) / steps, band);
    remaining[i] = (remaining[i + 1] ?? 0) + energy;
  }
  const timeAt = (db: number): number => {
    const target = (remaining[0] ?? 0) * 10 ** (-db / 10);
    const index = remaining.findIndex((value) => value < target);
    return (index * end) / steps;
  };
  return 3 * (timeAt(25) - timeAt(5));
}

/** T20 of every band, s. */
export function reverberationTimes(room: Room): number[] {
  return bandHz.map((_, band) => reverberationTime(room, band));
}

/** Half the logarithmic loss of a pair of walls, per metre of travel along its axis. */
function axisLoss({ size, absorption }: Room, band: number): [number, number, number] {
  const of = (wall: number, length: number): number => {
    const near = 1 - (absorption[wall]?.[band] ?? 0);
    const far = 1 - (absorption[wall + 1]?.[band] ?? 0);
    return -Math.log(Math.max(near * far, 1e-12)) / (2 * length);
  };
  return [of(0, size.x), of(2, size.y), of(4, size.z)];
}

/** Directions evenly over one eighth of the sphere (golden spiral), as |u|, |v|, |w|. */
const directions: readonly (readonly [number, number, number])[] = Array.from(
  { length: 256 },
  (_, i) => {
    const w = (i + 0.5) / 256;
    const angle = (((i * (Math.sqrt(5) - 1)) / 2) % 1) * (Math.PI / 2);
    const flat = Math.sqrt(1 - w * w);
    return [flat * Math.cos(angle), flat * Math.sin(angle), w];
  },
);
