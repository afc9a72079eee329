import { msg, str } from '@lit/localize';
import { claimWord } from '../claim-word';
import type { HandoverLine } from '../../../src/handover/handover';
import { sayList } from '../../../src/proposal/phrases';

/** What holds, one sentence a claim: "Polarity: FL, FR and FC hold.", or its own of a single line. */
export function heldClaims(lines: readonly HandoverLine[]): string[] {
  const claims = [...new Set(lines.map(({ claim }) => claim))];
  return claims.flatMap((claim) => {
    const held = lines.filter((line) => line.claim === claim && line.verdict === 'pass');
    if (held.length === 0) return [];
    const all = lines.filter((line) => line.claim === claim).length;
    if (held.length === all && all > 1) return [msg(str`${claimWord(claim)}: all ${all} hold.`)];
    // One line about the whole system says best itself what holds.
    const [only] = held;
    if (all === 1 && only) return [only.sentence];
    const names = [...new Set(held.flatMap(({ channels }) => channels))];
    return [
      names.length === 0
        ? msg(str`${claimWord(claim)}: it holds.`)
        : names.length === 1
          ? msg(str`${claimWord(claim)}: ${sayList(names)} holds.`)
          : msg(str`${claimWord(claim)}: ${sayList(names)} hold.`),
    ];
  });
}
