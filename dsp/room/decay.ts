import { airDbPerMetre, bandHz } from './bands';
import { roomVolume, soundSpeed, type Room } from './room';

/** How the reflections of one band die away: a mean of exponentials, one per direction. */
export interface Decay {
  /** Energy per second at `seconds` of the reflections of a source of 1 at 1 m. */
  energyAt(seconds: number): number;
  /** The same at `from`, `from + step` and so on: the n-th of them, from 0, in order at first. */
  energiesFrom(from: number, step: number): (n: number) => number;
  /** First time, s, at which that has fallen by `db`; at most `longest`. */
  timeOfFall(db: number, longest?: number): number;
  /** T20, s: fall of the backward-integrated decay from −5 to −25 dB, times three (ISO 3382). */
  readonly reverberationSeconds: number;
}

/**
 * Decay of a band: (4πc/V)·⟨e^(−k(u) t)⟩ over directions u with
 * k = c Σ_i |u_i|/(2 L_i) · ln(1/((1 − α_i0)(1 − α_i1))) + the loss in air. This is the density of
 * the lattice of image sources times their mean energy.
 */
export function bandDecay(room: Room, band: number): Decay {
  const known = decaysOf.get(room) ?? new Map<number, Decay>();
  const decay = known.get(band) ?? computeDecay(room, band);
  decaysOf.set(room, known.set(band, decay));
  return decay;
}

/** A room is asked for the same by each speaker in it. */
const decaysOf = new WeakMap<Room, Map<number, Decay>>();

function computeDecay(room: Room, band: number): Decay {
  const rates = decayRates(room, band);
  const density = (4 * Math.PI * soundSpeed(room)) / roomVolume(room) / rates.length;
  const energyAt = (seconds: number): number => {
    let sum = 0;
    for (let i = 0; i < rates.length; i++) sum += Math.exp(-(rates[i] ?? 0) * seconds);
    return density * sum;
  };
  const stepped = new Map<string, (n: number) => number>();
  const remainingAt = (seconds: number): number => {
    let sum = 0;
    for (let i = 0; i < rates.length; i++) {
      const rate = rates[i] ?? 1;
      sum += Math.exp(-rate * seconds) / rate;
    }
    return density * sum;
  };
  return {
    energyAt,
    energiesFrom: (from, step) => {
      const key = `${from} ${step}`;
      const energies = stepped.get(key) ?? steppedEnergies(rates, density, from, step);
      stepped.set(key, energies);
      return energies;
    },
    timeOfFall: (db, longest = 20) => fallTime(energyAt, db, longest),
    get reverberationSeconds() {
      const near = (db: number): number => nearFall(rates, db);
      return 3 * (fallTime(remainingAt, 25, 60, near(25)) - fallTime(remainingAt, 5, 60, near(5)));
    },
  };
}

/** Exponentials at even steps, each the one before times what it loses in a step. */
function steppedEnergies(
  rates: Float64Array,
  density: number,
  from: number,
  step: number,
): (n: number) => number {
  const now = rates.map((rate) => Math.exp(-rate * from));
  const loss = rates.map((rate) => Math.exp(-rate * step));
  const energies: number[] = [];
  return (n) => {
    while (energies.length <= n) {
      let sum = 0;
      for (let i = 0; i < now.length; i++) {
        const value = now[i] ?? 0;
        sum += value;
        now[i] = value * (loss[i] ?? 0);
      }
      energies.push(density * sum);
    }
    return energies[n] ?? 0;
  };
}

/** T20 of every band, s. */
export function reverberationTimes(room: Room): number[] {
  return bandHz.map((_, band) => bandDecay(room, band).reverberationSeconds);
}

/**
 * Time at which a falling function has lost `db`, by bisection; at most `longest`. `near`: where it
 * is known to lie to a millionth of itself, which spares all steps that are plain from there.
 */
function fallTime(
  energy: (seconds: number) => number,
  db: number,
  longest: number,
  near?: number,
): number {
  const target = energy(0) * 10 ** (-db / 10);
  const isBefore = (seconds: number): boolean =>
    near !== undefined && Math.abs(seconds / near - 1) > 1e-6
      ? seconds < near
      : energy(seconds) > target;
  let low = 0;
  let high = longest;
  if (isBefore(high)) return high;
  for (let i = 0; i < 30; i++) {
    const middle = (low + high) / 2;
    if (isBefore(middle)) low = middle;
    else high = middle;
  }
  return high;
}

/** Fall of what remains, by Newton's steps on its level: that is convex, so they come from below. */
function nearFall(rates: Float64Array, db: number): number {
  const fall = (db / 10) * Math.LN10;
  let whole = 0;
  for (let i = 0; i < rates.length; i++) whole += 1 / (rates[i] ?? 1);
  let seconds = 0;
  for (let step = Infinity, n = 0; step > 1e-8 * seconds && n < 50; n++) {
    let energy = 0;
    let remaining = 0;
    for (let i = 0; i < rates.length; i++) {
      const rate = rates[i] ?? 1;
      const now = Math.exp(-rate * seconds);
      energy += now;
      remaining += now / rate;
    }
    step = ((fall + Math.log(remaining / whole)) * remaining) / energy;
    seconds += step;
  }
  return seconds;
}

function decayRates(room: Room, band: number): Float64Array {
  const { size, absorption } = room;
  const c = soundSpeed(room);
  const loss = (wall: number, length: number): number => {
    const near = 1 - (absorption[wall]?.[band] ?? 0);
    const far = 1 - (absorption[wall + 1]?.[band] ?? 0);
    return -Math.log(Math.max(near * far, 1e-12)) / (2 * length);
  };
  const [x, y, z] = [loss(0, size.x), loss(2, size.y), loss(4, size.z)];
  const air = ((airDbPerMetre[band] ?? 0) * Math.LN10) / 10;
  return Float64Array.from(directions, ([u, v, w]) => c * (u * x + v * y + w * z + air));
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
