import type { Envelope } from './band-envelope';
import { integrateDecay, type DecayCurve } from './decay-curve';
import { distrust, type DecayTime } from './decay-time';
import { findKnee } from './find-knee';
import { buildUpSeconds } from './octave-envelope';
import { octaveWidthHz } from './octave-filter';
import { octaveName } from './octave-name';
import { readDecayTime } from './read-decay-time';

/** The decay of one octave band. */
export interface DecayBand {
  /** Exact midpoint, Hz. */
  readonly midHz: number;
  /** Nominal midpoint with its unit. */
  readonly name: string;
  readonly edt: DecayTime;
  readonly t20: DecayTime;
  readonly t30: DecayTime;
  /** 100(T30/T20 − 1), %; null unless both are told. */
  readonly curvature: number | null;
  /** How far the decay starts above the noise or what else ends it, dB; null when none stands clear. */
  readonly rangeDb: number | null;
  readonly curve: DecayCurve | null;
}

/** More curvature than this, %, is no single decay. ISO 3382-2:2008, annex B (from memory). */
const mostCurvature = 10;
/** Chance makes it so large at one place once in twenty times, % times √(BT). */
const chanceCurvature = 140;

/**
 * Decay times of an octave band from its power along time. `arrival` in samples of the envelope;
 * `noise` is its mean square in noise heard by itself, or null. T20 and T30 are distrusted when they
 * differ by more than 10 % that chance does not explain.
 */
export function readDecayBand(
  envelope: Envelope,
  noise: number | null,
  arrival: number,
  midHz: number,
): DecayBand {
  const widthHz = octaveWidthHz(midHz);
  const lead = buildUpSeconds(midHz) * envelope.sampleRate;
  // Towards its end the record lacks what would follow.
  const to = Math.floor(envelope.power.length - lead);
  const search = { from: arrival, to, widthHz, noise };
  const knee = findKnee(envelope, search);
  const curve = knee && integrateDecay(envelope, arrival, lead, knee);
  const heard = to - arrival < lead ? 'record' : (curve ?? 'noise');
  const name = octaveName(midHz);
  const edt = readDecayTime(heard, 'EDT', widthHz, name);
  const t20 = readDecayTime(heard, 'T20', widthHz, name);
  const t30 = readDecayTime(heard, 'T30', widthHz, name);
  const both = t20.seconds !== null && t30.seconds !== null;
  const curvature = both ? 100 * ((t30.seconds ?? 0) / (t20.seconds ?? 1) - 1) : null;
  const rangeDb = curve && Math.max(0, curve.rangeDb);
  const band = { midHz, name, edt, curvature, rangeDb, curve };
  const chance = chanceCurvature / Math.sqrt(widthHz * (t20.seconds ?? Infinity));
  const most = Math.max(mostCurvature, chance);
  if (curvature === null || Math.abs(curvature) <= most) return { ...band, t20, t30 };
  const more = curvature > 0 ? 'longer' : 'shorter';
  const sentence = `The decay at ${name} bends: T30 is ${Math.abs(curvature).toFixed(0)} % ${more} than T20, so that neither is the room’s alone. Another seat would tell whether the room does it.`;
  return { ...band, t20: distrust(t20, sentence), t30: distrust(t30, sentence) };
}
