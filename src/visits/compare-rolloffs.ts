import { sentenceName } from '../proof/claim-answers';
import { sayHz, sayNumber } from '../proposal/phrases';
import type { Estimate } from '../reading/reading';
import { changeFigure, judgeChange, type ChangeLimits } from './judge-change';
import { speakerFinding } from './make-finding';
import type { PairedPosition, PairedSpeaker } from './pair-positions';
import type { VisitFinding } from './visits';

/** A sixth of an octave is 12 %. */
const limits: ChangeLimits = { allowed: 1 / 6, coarsest: 1 / 2 };

/** Where each speaker is 6 dB down at a position, held against then. */
export function compareRolloffs({ position, speakers }: PairedPosition): VisitFinding[] {
  return speakers.map((speaker) => rolloffOf(position.name, speaker));
}

function rolloffOf(at: string, { channel, now, before }: PairedSpeaker): VisitFinding {
  const { label, name } = channel;
  const action = `Hold the microphone close to ${name} at both visits and take it there.`;
  const [is, was] = [now.rolloff?.f6Hz, before.rolloff?.f6Hz];
  if (!is || !was) {
    const when = is ? 'then' : was ? 'now' : 'at either visit';
    return speakerFinding('roll-off', label, at, {
      verdict: 'cannot tell',
      sentence: `Whether the roll-off of ${name} changed cannot be told: none was read ${when}.`,
      action,
    });
  }
  const octaves = Math.log2(is.median / was.median);
  const half = Math.hypot(halfOctaves(is), halfOctaves(was));
  const verdict = judgeChange(octaves, half, limits);
  const [from, to] = [sayHz(was.median), sayHz(is.median)];
  const unsure = `give or take ${sayNumber(100 * (2 ** half - 1), 0)} %`;
  const sentences = {
    'as it was': `${sentenceName(name)} rolls off where it did: 6 dB down at ${to}, then at ${from}, ${unsure}.`,
    changed: `${sentenceName(name)} is 6 dB down at ${to} and was at ${from}: more than both intervals allow.`,
    'cannot tell': `${sentenceName(name)} is 6 dB down at ${to} and was at ${from}, ${unsure}.`,
  } as const;
  const figure = changeFigure(octaves, half, limits, 'octaves');
  return speakerFinding('roll-off', label, at, {
    verdict,
    sentence: sentences[verdict],
    figure,
    action,
  });
}

function halfOctaves({ interval: [low, high] }: Estimate): number {
  return low > 0 && high > 0 ? Math.log2(high / low) / 2 : limits.coarsest;
}
