import { msg, str } from '@lit/localize';
import { sentenceName } from '../proof/claim-answers';
import { unsureShapeDb } from '../proof/moved-microphone';
import { sayHz, sayNumber } from '../proposal/phrases';
import type { Estimate } from '../reading/reading';
import { bandChanges } from './band-changes';
import { changeFigure, judgeChange, type ChangeLimits } from './judge-change';
import { speakerFinding } from './make-finding';
import type { PairedPosition, PairedSpeaker } from './pair-positions';
import type { VisitFinding } from './visits';

/** A sixth of an octave is 12 %. */
const limits: ChangeLimits = { allowed: 1 / 6, coarsest: 1 / 2 };

/** A response that agrees this well about the roll-off leaves no room for another one, dB. */
const alikeDb = 1.5;
/** Bands about the roll-off that must tell. */
const leastBands = 6;

/**
 * Where each speaker is 6 dB down at a position, held against then. The room makes a roll-off
 * unsure, and does so alike at both visits: where the response about it is as it was, at the same
 * place, so is the roll-off, however wide its intervals.
 */
export function compareRolloffs(
  { position, speakers }: PairedPosition,
  movedMetres: number,
): VisitFinding[] {
  return speakers.map((speaker) => rolloffOf(position.name, speaker, movedMetres));
}

function rolloffOf(at: string, speaker: PairedSpeaker, movedMetres: number): VisitFinding {
  const { channel, now, before } = speaker;
  const { label, name } = channel;
  const action = msg(str`Hold the microphone close to ${name} at both visits and take it there.`);
  const [is, was] = [now.rolloff?.f6Hz, before.rolloff?.f6Hz];
  if (!is || !was) {
    const when = is ? 'then' : was ? 'now' : msg('at either visit');
    return speakerFinding('roll-off', label, at, {
      verdict: 'cannot tell',
      sentence: msg(
        str`Whether the roll-off of ${name} changed cannot be told: none was read ${when}.`,
      ),
      action,
    });
  }
  const octaves = Math.log2(is.median / was.median);
  const half = Math.hypot(halfOctaves(is), halfOctaves(was));
  const judged = judgeChange(octaves, half, limits);
  const isAlike = judged === 'cannot tell' && isAlikeAbout(speaker, was.median, movedMetres);
  const verdict = isAlike ? 'as it was' : judged;
  const [from, to] = [sayHz(was.median), sayHz(is.median)];
  const unsure = msg(str`give or take ${sayNumber(100 * (2 ** half - 1), 0)} %`);
  const sentences = {
    'as it was': isAlike
      ? msg(
          str`${sentenceName(name)} rolls off where it did: about ${from} its response is as it was.`,
        )
      : msg(
          str`${sentenceName(name)} rolls off where it did: 6 dB down at ${to}, then at ${from}, ${unsure}.`,
        ),
    changed: msg(
      str`${sentenceName(name)} is 6 dB down at ${to} and was at ${from}: more than both intervals allow.`,
    ),
    'cannot tell': msg(
      str`${sentenceName(name)} is 6 dB down at ${to} and was at ${from}, ${unsure}.`,
    ),
  } as const;
  const figure = changeFigure(octaves, half, limits, 'octaves');
  return speakerFinding('roll-off', label, at, {
    verdict,
    sentence: sentences[verdict],
    figure,
    action,
  });
}

/** Whether the response from an octave below a frequency to an octave above is as it was. */
function isAlikeAbout(speaker: PairedSpeaker, hz: number, movedMetres: number): boolean {
  const bands = bandChanges(speaker, [hz / 2, 2 * hz]);
  const unsure = unsureShapeDb({ movedMetres });
  const isAlike = bands.every(({ db, half }) => Math.abs(db) + half + unsure <= alikeDb);
  return isAlike && bands.length >= leastBands;
}

function halfOctaves({ interval: [low, high] }: Estimate): number {
  return low > 0 && high > 0 ? Math.log2(high / low) / 2 : limits.coarsest;
}
