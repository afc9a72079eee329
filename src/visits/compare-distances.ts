import { smallLengthText } from '../locale/length-text';
import { msg, str } from '@lit/localize';
import { sentenceName } from '../proof/claim-answers';
import { listInWords } from '../system/list-in-words';
import { mainLimits, subLimits, type DistanceChange, type Moves } from './find-moves';
import { changeFigure, judgeChange } from './judge-change';
import { makeFinding, speakerFinding } from './make-finding';
import type { PairedPosition, PairedSpeaker } from './pair-positions';
import type { VisitFinding } from './visits';

/** The microphone's place and each speaker's distance at a position, held against then. */
export function compareDistances(pair: PairedPosition, moves: Moves): VisitFinding[] {
  const found = pair.speakers.map((speaker) => {
    const change = moves.changes.get(speaker.channel.label) ?? null;
    return change ? distanceOf(pair, moves, speaker, change) : untold(pair, moves, speaker);
  });
  return [...microphonePlace(pair, moves), ...found];
}

function microphonePlace({ position: { name } }: PairedPosition, moves: Moves): VisitFinding[] {
  if (moves.kind === 'speakers') return [];
  const { microphone } = moves;
  if (!microphone) {
    const sentence = msg(
      str`At ${name} most distances differ from then, and no one place of the microphone explains them.`,
    );
    const action = msg('Put the microphone where it stood then and take it again.');
    return [
      makeFinding('microphone', '', { position: name, verdict: 'cannot tell', sentence, action }),
    ];
  }
  const { rightMetres, backMetres } = microphone;
  const metres = Math.hypot(rightMetres, backMetres);
  const ways = [
    { metres: rightMetres, word: rightMetres > 0 ? msg('to the right') : msg('to the left') },
    { metres: backMetres, word: backMetres > 0 ? 'back' : 'forward' },
  ].filter((way) => Math.abs(way.metres) >= 0.02);
  const where = ways.map((way) => `${saySmall(way.metres)} ${way.word}`);
  const sentence = msg(
    str`The distances fit a microphone, or a seat, that stands ${listInWords(where)} of where it stood: no speaker need have moved for it. Levels and responses can be told once it stands there again.`,
  );
  const figure = changeFigure(metres, mainLimits.allowed, mainLimits, 'm');
  return [makeFinding('microphone', '', { position: name, verdict: 'changed', sentence, figure })];
}

function distanceOf(
  { position: { name: at } }: PairedPosition,
  { kind }: Moves,
  { channel: { label, name, kind: what } }: PairedSpeaker,
  { metres, half }: DistanceChange,
): VisitFinding {
  const limits = what === 'sub' ? subLimits : mainLimits;
  const judged = judgeChange(metres, half, limits);
  const verdict = kind === 'unexplained' && judged === 'changed' ? 'cannot tell' : judged;
  const beside =
    kind === 'microphone'
      ? msg('once the microphone’s place is allowed for')
      : msg('beside the others');
  const amount = `${saySmall(metres)} ${metres < 0 ? 'nearer' : 'farther'}`;
  const sentences = {
    'as it was': msg(
      str`${sentenceName(name)} is as far as it was ${beside}, to ${saySmall(Math.abs(metres) + half)}.`,
    ),
    changed: msg(
      str`${sentenceName(name)} is ${amount} than it was ${beside}, give or take ${saySmall(half)}: it was moved, or its delay was.`,
    ),
    'cannot tell':
      judged === 'changed'
        ? msg(
            str`${sentenceName(name)} is ${amount} ${beside}; whether it, the others or the microphone moved cannot be told.`,
          )
        : msg(str`${sentenceName(name)} is ${amount} ${beside}, give or take ${saySmall(half)}.`),
  } as const;
  const action =
    judged === 'changed'
      ? msg('Put the microphone where it stood then and take it again.')
      : msg(str`Take ${at} again, louder.`);
  const figure = changeFigure(metres, half, limits, 'm');
  return speakerFinding('distance', label, at, {
    verdict,
    sentence: sentences[verdict],
    figure,
    action,
  });
}

/** A centimetre at least: "8 cm", "3.1 in". */
function saySmall(metres: number): string {
  return smallLengthText(Math.max(0.01, Math.abs(metres)));
}

function untold(
  { position: { name: at } }: PairedPosition,
  { kind }: Moves,
  { channel: { label, name, kind: what } }: PairedSpeaker,
): VisitFinding {
  const isAway = what === 'sub' && kind !== 'speakers';
  return speakerFinding('distance', label, at, {
    verdict: 'cannot tell',
    sentence: isAway
      ? msg(str`Whether ${name} moved cannot be told while the microphone stands elsewhere.`)
      : msg(str`Whether ${name} moved cannot be told: it was not timed at both visits.`),
    action: isAway
      ? msg('Put the microphone where it stood then and take it again.')
      : msg(str`Take ${at} again, louder.`),
  });
}
