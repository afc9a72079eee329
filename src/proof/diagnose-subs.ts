import { msg, str } from '@lit/localize';
import { throughPath } from '../../dsp/bass/electrical-path';
import { fitPath } from '../../dsp/comparison/fit-path';
import { sayHz } from '../proposal/phrases';
import { expectLfe } from './expect-bass';
import { explainLines, failedLine } from './explain-line';
import { subBand, type Findings } from './findings';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** What a sub's own low-pass may be: from its lowest to its highest setting, and its slopes. */
const lowestHz = 35;
const highestHz = 140;
const orders = [1, 2, 3, 4] as const;
/** So much of what does not fit must be explained by it, and so little else be left. */
const explainsShare = 0.75;
const mostSeconds = 0.8e-3;
const mostDb = 2;
const alike = 0.97;

/** Names a low-pass at the sub itself, or something else that shapes it. */
export function diagnoseSubs(
  proof: ProofCase,
  findings: Findings,
  lines: readonly ProofLine[],
): readonly ProofLine[] {
  for (const sub of proof.subs) {
    const { label } = sub.channel;
    const bad = (['response', 'arrival', 'level'] as const).some((claim) =>
      failedLine(lines, claim, label),
    );
    const hz = bad ? ownLowPass(proof, findings, sub) : null;
    if (hz !== null) {
      lines = explainLines(lines, ['response', 'arrival', 'level', 'polarity'], [label], {
        slip: 'own low-pass on',
        changes: [
          {
            setting: 'own low-pass of the sub',
            channels: [label],
            group: null,
            from: hz,
            to: 'off',
            unit: 'Hz',
          },
        ],
        sentence: msg(
          str`A low-pass near ${sayHz(hz)} at the sub itself seems to be on: switch it off, or turn it to its highest.`,
        ),
      });
    } else if (failedLine(lines, 'response', label)) {
      lines = explainLines(lines, ['response', 'arrival', 'level'], [label], {
        slip: 'equaliser or dynamics on',
        changes: [
          {
            setting: 'equaliser and dynamics',
            channels: [label],
            group: null,
            from: 'on',
            to: 'off',
            unit: null,
          },
        ],
        sentence: msg('An equaliser seems to be on.'),
      });
    }
  }
  return lines;
}

/** The low-pass that explains how a sub differs from what was expected, Hz; null for none. */
function ownLowPass(proof: ProofCase, { subFits }: Findings, sub: ProvedChannel): number | null {
  const plain = subFits.get(sub.channel.label);
  const expected = expectLfe(proof, sub);
  if (!plain || !expected || !sub.bassAfter) return null;
  let best: { readonly hz: number; readonly agreement: number } | null = null;
  for (let hz = lowestHz; hz <= highestHz; hz *= 2 ** (1 / 12)) {
    for (const order of orders) {
      const filter = { family: 'butterworth', kind: 'low-pass', order, cutoffHz: hz } as const;
      const filtered = throughPath([expected], { filters: [filter] }, proof.hz)[0];
      const fit = filtered && fitPath(sub.bassAfter, filtered, proof.hz, subBand);
      if (!fit || Math.abs(fit.delaySeconds) > mostSeconds || Math.abs(fit.gainDb) > mostDb)
        continue;
      if (fit.agreement > (best?.agreement ?? alike)) best = { hz, agreement: fit.agreement };
    }
  }
  const left = (agreement: number): number => 1 - agreement ** 2;
  if (!best || left(best.agreement) > (1 - explainsShare) * left(plain.agreement)) return null;
  return best.hz;
}
