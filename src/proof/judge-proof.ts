import { claimAnswers } from './claim-answers';
import { claimArrival } from './claim-arrival';
import { claimCrossover } from './claim-crossover';
import { claimLevel } from './claim-level';
import { claimNothingElse } from './claim-nothing-else';
import { claimPolarity } from './claim-polarity';
import { claimResponse } from './claim-response';
import { claimLfe, claimRedirected } from './claim-subs';
import { diagnose } from './diagnose';
import { findAll } from './findings';
import { actionIfMoved, sayMoved } from './moved-microphone';
import type { Proof, ProofLine, Verdict } from './proof';
import { proofCase, type ProofInput } from './proof-case';

/**
 * Judges every claim that typed settings make, from readings of one microphone position before and
 * through the processor: pass, fail with what to change, or cannot tell with what would settle it.
 * The 90 % intervals of readings count: a claim that is neither surely kept nor surely broken cannot
 * be told. Throws RangeError for readings of another layout.
 */
export function judgeProof(input: ProofInput): Proof {
  const { layout, before, after } = input;
  for (const readings of before ? [before, after] : [after]) {
    if (readings.layout !== layout.name) {
      throw new RangeError(`readings must be of ${layout.name}, got ${readings.layout}`);
    }
  }
  const proof = proofCase(input);
  const findings = findAll(proof);
  const { mains, subs } = proof;
  const each = (claim: (one: (typeof mains)[number]) => ProofLine | null): ProofLine[] =>
    [...mains, ...subs].flatMap((one) => claim(one) ?? []);
  const ofMains = (claim: (one: (typeof mains)[number]) => ProofLine | null): ProofLine[] =>
    mains.flatMap((one) => claim(one) ?? []);
  const judged = [
    ...each((one) => claimAnswers(proof, findings, one)),
    ...each((one) => claimPolarity(proof, findings, one)),
    ...each((one) => claimArrival(proof, findings, one)),
    ...each((one) => claimLevel(proof, findings, one)),
    ...ofMains((one) => claimCrossover(proof, findings, one)),
    ...ofMains((one) => claimRedirected(proof, findings, one)),
    ...[claimLfe(proof, findings) ?? []].flat(),
    ...each((one) => claimResponse(proof, findings, one)),
    ...[claimNothingElse(proof) ?? []].flat(),
  ];
  const moved = actionIfMoved(findings);
  const lines = diagnose(proof, findings, judged).map((line) =>
    moved && line.verdict === 'cannot tell' && line.figure ? { ...line, action: moved } : line,
  );
  // A speaker that plays along looks like another place of the microphone.
  const isAlone = lines.every(
    ({ claim, verdict }) => claim !== 'nothing else' || verdict !== 'fail',
  );
  const note = isAlone ? sayMoved(findings) : null;
  const count = (verdict: Verdict): number =>
    lines.filter((line) => line.verdict === verdict).length;
  return {
    format: 'leadline-proof',
    version: 1,
    layout: layout.name,
    simulated: after.simulated,
    lines,
    notes: note === null ? [] : [note],
    counts: { pass: count('pass'), fail: count('fail'), 'cannot tell': count('cannot tell') },
  };
}
