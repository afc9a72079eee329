import { msg, str } from '@lit/localize';
import { median } from '../../dsp/signal/median';
import { sayList, sayMetres } from '../proposal/phrases';
import type { ChannelLabel } from '../system/channel';
import { partnerLabel } from '../system/partner-label';
import { metresIn } from '../system/sheet/steps-of-sheet';
import { allowedArrivalMs } from './claim-arrival';
import { explainLines, failedLine, type Cause } from './explain-line';
import type { Findings } from './findings';
import type { ProofLine, SettingChange, Slip } from './proof';
import type { ProofCase } from './proof-case';

/** A channel's time against what its distance asks for. */
interface Late {
  readonly label: ChannelLabel;
  readonly typed: number;
  readonly seconds: number;
  readonly tolerance: number;
}

/** Names what was typed instead of the distances of channels that arrive early or late. */
export function diagnoseDistances(
  proof: ProofCase,
  findings: Findings,
  lines: readonly ProofLine[],
): readonly ProofLine[] {
  const all = latenesses(proof, findings);
  const isBad = ({ label }: Late): boolean => failedLine(lines, 'arrival', label) !== null;
  if (!all.some(isBad)) return lines;
  const { metresPerSecond } = proof;
  const explain = (
    those: readonly Late[],
    factorOf: (one: Late) => number,
    slip: Slip | null,
    sentence: string,
  ): void => {
    const changes = those.map((one) => changeOf(one, factorOf(one) * one.typed));
    const cause: Cause = { slip, changes, sentence };
    lines = explainLines(
      lines,
      ['arrival'],
      those.map(({ label }) => label),
      cause,
    );
  };
  for (const [factor, sentence] of units()) {
    const shift = median(all.map(({ typed }) => ((1 - factor) * typed) / metresPerSecond));
    const fits = (one: Late): boolean =>
      isNear(one, ((1 - factor) * one.typed) / metresPerSecond - shift);
    if (all.every(fits)) {
      explain(
        all,
        () => factor,
        'feet for metres',
        msg(str`All distances seem to be ${sentence}.`),
      );
    }
  }
  for (const one of all) {
    const other = all.find(({ label }) => label === partnerLabel(one.label));
    if (!other || !(isBad(one) || isBad(other)) || one.label > other.label) continue;
    const apart = (other.typed - one.typed) / metresPerSecond;
    if (!isNear(one, -apart) || !isNear(other, apart)) continue;
    if (Math.abs(apart) < one.tolerance / 2) continue;
    const names = sayList([one.label, other.label]);
    explain(
      [one, other],
      (it) => (it === one ? other.typed / one.typed : one.typed / other.typed),
      'wrong side',
      msg(str`The distances of ${names} seem to be typed for each other.`),
    );
  }
  for (const one of all.filter(isBad)) {
    for (const [factor, sentence] of units()) {
      if (!isNear(one, ((1 - factor) * one.typed) / metresPerSecond)) continue;
      explain(
        [one],
        () => factor,
        'feet for metres',
        msg(str`Its distance seems to be ${sentence}.`),
      );
    }
    const now = one.typed - metresPerSecond * one.seconds;
    explain(
      [one],
      () => now / one.typed,
      null,
      msg(str`It sounds as if ${sayMetres(now)} was typed; type ${sayMetres(one.typed)}.`),
    );
  }
  return lines;
}

const units = () =>
  [
    [1 / metresIn.ft, msg('typed in feet where the processor takes metres')],
    [metresIn.ft, msg('typed in metres where the processor takes feet')],
  ] as const;

function latenesses(proof: ProofCase, { arrivals, subFits, lates, middleLate }: Findings): Late[] {
  const { typed, mains, subs } = proof;
  return [...mains, ...subs].flatMap(({ channel: { label, kind } }): Late[] => {
    const isSub = kind === 'sub';
    const distance = typed.distanceMetres[label];
    const late = lates.get(label);
    if (distance === undefined || !(distance > 0) || late === undefined) return [];
    const half = (isSub ? subFits.get(label)?.halfSeconds : arrivals.get(label)?.half) ?? 0;
    const tolerance = allowedArrivalMs(proof, isSub) / 1000 + half;
    return [{ label, typed: distance, seconds: late - middleLate, tolerance }];
  });
}

function isNear({ seconds, tolerance }: Late, wanted: number): boolean {
  return Math.abs(seconds - wanted) <= tolerance;
}

function changeOf({ label, typed }: Late, now: number): SettingChange {
  return { setting: 'distance', channels: [label], group: null, from: now, to: typed, unit: 'm' };
}
