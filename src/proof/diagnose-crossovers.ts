import { msg, str } from '@lit/localize';
import { throughPath } from '../../dsp/bass/electrical-path';
import { logBand, smoothOnGrid } from '../../dsp/bass/log-band';
import type { Transfer } from '../../dsp/bass/transfer';
import { powerOf } from '../../dsp/comparison/fit-path';
import { sayHz } from '../proposal/phrases';
import type { GroupId } from '../system/channel';
import { expectAsHeard } from './as-heard';
import {
  addKnown,
  crossoverOf,
  expectRedirected,
  heardRedirected,
  highPassOf,
} from './expect-bass';
import { explainLines } from './explain-line';
import type { Findings } from './findings';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** Another crossover must leave no more than this share of what the wanted one leaves. */
const muchBetter = 0.5;
const band = [22, 300] as const;
/** A sign is believed only from responses this much alike. */
const surelyAlike = 0.8;

/** Names the crossover a group seems to have where its sum is not as predicted. */
export function diagnoseCrossovers(
  proof: ProofCase,
  findings: Findings,
  lines: readonly ProofLine[],
): readonly ProofLine[] {
  const groups = [...new Set(proof.mains.map(({ channel }) => channel.group))];
  for (const group of groups) {
    const members = proof.mains.filter(({ channel }) => channel.group === group);
    const labels = members.map(({ channel }) => channel.label);
    const isBad = lines.some(
      ({ claim, verdict, channels: [label] }) =>
        (claim === 'crossover' || claim === 'redirected bass') &&
        verdict === 'fail' &&
        label !== undefined &&
        labels.includes(label),
    );
    const found = isBad ? likeliestCrossover(proof, findings, members) : null;
    if (found)
      lines = explainLines(lines, ['crossover', 'redirected bass'], labels, causeOf(group, found));
  }
  return lines;
}

interface Found {
  readonly nowHz: number | null;
  readonly wantedHz: number;
}

function causeOf(group: GroupId, { nowHz, wantedHz }: Found) {
  const to = `${sayHz(wantedHz)}`;
  return {
    slip: nowHz === null ? ('left on full range' as const) : ('another crossover' as const),
    changes: [
      {
        setting: 'crossover' as const,
        channels: [],
        group,
        from: nowHz ?? 'full range',
        to: wantedHz,
        unit: 'Hz' as const,
      },
    ],
    sentence:
      nowHz === null
        ? msg(str`The crossover seems to be left on full range: set it to ${to}.`)
        : msg(str`The crossover seems to be at ${sayHz(nowHz)}: set it to ${to}.`),
  };
}

/** The crossover that explains a group's bass best; null where that is the wanted one. */
function likeliestCrossover(
  proof: ProofCase,
  findings: Findings,
  members: readonly ProvedChannel[],
): Found | null {
  const [first] = members;
  const wantedHz = first ? crossoverOf(proof, first) : null;
  if (wantedHz === null) return null;
  const left = (hz: number | null): number =>
    members.reduce((sum, one) => sum + (unexplained(proof, findings, one, hz) ?? 0), 0);
  const wanted = left(wantedHz);
  const others = [null, ...proof.steps.crossoverHz.filter((hz) => hz !== wantedHz)];
  const judged = others.map((hz) => ({ hz, left: left(hz) }));
  const best = judged.reduce((least, one) => (one.left < least.left ? one : least), {
    hz: wantedHz as number | null,
    left: wanted,
  });
  if (best.left > muchBetter * wanted) return null;
  return { nowHz: best.hz, wantedHz };
}

/** Share of a main's bass that a crossover leaves unexplained, every octave counted alike. */
export function unexplained(
  proof: ProofCase,
  { signs, lfe }: Findings,
  one: ProvedChannel,
  crossoverHz: number | null,
): number | null {
  const { bassAfter, channel } = one;
  const { typed, hz } = proof;
  const filters = crossoverHz === null ? [] : [highPassOf(typed, crossoverHz)];
  const expected = expectAsHeard(proof, one, filters);
  if (!bassAfter || !expected) return null;
  const sign = signs.get(channel.label);
  const inverted = sign !== undefined && sign.agreement >= surelyAlike && sign.inverted;
  const own = throughPath([expected], { filters: [], inverted }, hz)[0];
  const heard = crossoverHz === null ? null : heardRedirected(proof, crossoverHz);
  const subs =
    heard && lfe
      ? (throughPath([heard], { filters: [], gainDb: -lfe.db }, hz)[0] ?? null)
      : crossoverHz === null
        ? null
        : (heard ?? expectRedirected(proof, crossoverHz));
  return misfit(bassAfter, addKnown(own ?? expected, subs), hz);
}

function misfit(measured: Transfer, expected: Transfer, hz: Float64Array): number {
  const { first, weights } = logBand(hz, band[0], band[1]);
  const smooth = smoothOnGrid(hz, powerOf(measured), 1);
  return weights.reduce((sum, weight, k) => {
    const at = first + k;
    const power =
      ((measured.re[at] ?? 0) - (expected.re[at] ?? 0)) ** 2 +
      ((measured.im[at] ?? 0) - (expected.im[at] ?? 0)) ** 2;
    return sum + (weight * power) / Math.max(smooth[at] ?? 0, 1e-30);
  }, 0);
}
