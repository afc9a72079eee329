import { throughPath } from '../../dsp/bass/electrical-path';
import type { Transfer } from '../../dsp/bass/transfer';
import type { FilterSpec } from '../../dsp/filter/analogue';
import { filterOf } from '../reading/take-out-filter';
import type { ChannelLabel } from '../system/channel';
import type { ProcessorSettings } from '../system/processor-settings';
import type { ProofCase, ProvedChannel } from './proof-case';

/**
 * What a speaker should sound like through the processor, filters given, from its bass before: its
 * trim, polarity and volume, and (own − reference)'s distance in time, since the time of readings
 * counts from the reference's arrival. Null without bass or distances.
 */
export function expectThrough(
  proof: ProofCase,
  { channel: { label }, bassBefore }: ProvedChannel,
  filters: readonly FilterSpec[],
): Transfer | null {
  const { typed, hz, metresPerSecond, after, volumeDb, referenceLateSeconds } = proof;
  const [own, its] = [typed.distanceMetres[label], typed.distanceMetres[after.reference]];
  if (!bassBefore || own === undefined || its === undefined) return null;
  const path = {
    filters,
    delaySeconds:
      label === after.reference ? 0 : (its - own) / metresPerSecond - referenceLateSeconds,
    gainDb: volumeDb + (typed.trimDb[label] ?? 0),
    inverted: typed.inverted.includes(label),
  };
  return throughPath([bassBefore], path, hz)[0] ?? null;
}

/** What is swept as a sub should sound like: LFE on that sub alone. */
export function expectLfe(proof: ProofCase, sub: ProvedChannel): Transfer | null {
  const { typed } = proof;
  return expectThrough(proof, sub, [lowPassOf(typed, typed.lfe.lowPassHz), ...subFilters(typed)]);
}

/** What all subs together should play of a main's bass at a crossover; null where one is unknown. */
export function expectRedirected(proof: ProofCase, crossoverHz: number): Transfer | null {
  const filters = [lowPassOf(proof.typed, crossoverHz), ...subFilters(proof.typed)];
  return addAll(proof.subs.map((sub) => expectThrough(proof, sub, filters)));
}

/**
 * What all subs together play of a main's bass at a crossover, by what each of them was just heard
 * to play of LFE, whatever its settings are; null where one was not heard.
 */
export function heardRedirected(
  { typed, subs, hz }: ProofCase,
  crossoverHz: number,
): Transfer | null {
  const together = addAll(subs.map(({ bassAfter }) => bassAfter));
  if (!together) return null;
  const moved = throughPath([together], { filters: [lowPassOf(typed, crossoverHz)] }, hz)[0];
  const lfe = throughPath([unit(hz)], { filters: [lowPassOf(typed, typed.lfe.lowPassHz)] }, hz)[0];
  if (!moved || !lfe) return null;
  return divideTransfers(moved, lfe);
}

/** The high-pass of a main at a crossover. */
export function highPassOf({ filters }: ProcessorSettings, hz: number): FilterSpec {
  return filterOf(filters.highPass, 'high-pass', hz);
}

export function lowPassOf({ filters }: ProcessorSettings, hz: number): FilterSpec {
  return filterOf(filters.subLowPass, 'low-pass', hz);
}

/** No sheet names the slope of a low cut, so it is taken as 12 dB per octave. */
function subFilters(typed: ProcessorSettings): FilterSpec[] {
  const { subLowPassHz, lowCutHz } = typed;
  return [
    ...(subLowPassHz === null ? [] : [lowPassOf(typed, subLowPassHz)]),
    ...(lowCutHz === null
      ? []
      : [{ family: 'butterworth', kind: 'high-pass', order: 2, cutoffHz: lowCutHz } as const]),
  ];
}

/** Sum of responses; null for none, or where one of them is not known. */
export function addAll(parts: readonly (Transfer | null)[]): Transfer | null {
  const known = parts.flatMap((part) => (part ? [part] : []));
  const [first, ...others] = known;
  if (!first || known.length < parts.length) return null;
  const sum = { re: first.re.slice(), im: first.im.slice() };
  for (const { re, im } of others) {
    for (let k = 0; k < sum.re.length; k++) {
      sum.re[k] = (sum.re[k] ?? 0) + (re[k] ?? 0);
      sum.im[k] = (sum.im[k] ?? 0) + (im[k] ?? 0);
    }
  }
  return sum;
}

/** The sum as far as it is known: a speaker whose part is null adds nothing. */
export function addKnown(own: Transfer, other: Transfer | null): Transfer {
  return (other && addAll([own, other])) ?? own;
}

function unit(hz: Float64Array): Transfer {
  return { re: new Float64Array(hz.length).fill(1), im: new Float64Array(hz.length) };
}

/** a / b, entry by entry; b is nowhere 0. */
function divideTransfers(a: Transfer, b: Transfer): Transfer {
  const re = new Float64Array(a.re.length);
  const im = new Float64Array(a.re.length);
  for (let k = 0; k < re.length; k++) {
    const [x, y] = [a.re[k] ?? 0, a.im[k] ?? 0];
    const [u, v] = [b.re[k] ?? 0, b.im[k] ?? 0];
    const size = Math.max(u * u + v * v, 1e-30);
    re[k] = (x * u + y * v) / size;
    im[k] = (y * u - x * v) / size;
  }
  return { re, im };
}

/** Crossover a channel was to have, Hz; null for full range and subs. */
export function crossoverOf({ typed }: ProofCase, { channel }: ProvedChannel): number | null {
  return channel.kind === 'sub' ? null : (typed.crossoverHz[channel.group] ?? null);
}

/** The channel of a label among those that were proved. */
export function provedChannel(proof: ProofCase, label: ChannelLabel): ProvedChannel | null {
  return [...proof.mains, ...proof.subs].find(({ channel }) => channel.label === label) ?? null;
}
