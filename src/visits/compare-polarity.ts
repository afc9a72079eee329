import { msg, str } from '@lit/localize';
import { sentenceName } from '../proof/claim-answers';
import { bassChange } from './bass-change';
import { speakerFinding } from './make-finding';
import type { PairedPosition, PairedSpeaker } from './pair-positions';
import type { VisitFinding } from './visits';

/** Whether each speaker pushes as it did: by its bass beside that of then, else by both readings. */
export function comparePolarity({ position, speakers }: PairedPosition): VisitFinding[] {
  return speakers.map((speaker) => polarityOf(position.name, speaker));
}

function polarityOf(at: string, speaker: PairedSpeaker): VisitFinding {
  const { label, name } = speaker.channel;
  const turned = isTurned(speaker);
  if (turned === null) {
    return speakerFinding('polarity', label, at, {
      verdict: 'cannot tell',
      sentence: msg(str`Whether ${name} was turned over since cannot be told.`),
      action: msg(str`Hold the microphone close to ${name} at both visits and take it there.`),
    });
  }
  return speakerFinding('polarity', label, at, {
    verdict: turned ? 'changed' : 'as it was',
    sentence: turned
      ? msg(
          str`${sentenceName(name)} was turned over since: with the amplifier off, look at its two wires, and at its setting.`,
        )
      : msg(str`${sentenceName(name)} has the polarity it had.`),
  });
}

/** Null where neither bass nor readings tell. */
function isTurned(speaker: PairedSpeaker): boolean | null {
  const fit = bassChange(speaker);
  if (fit) return fit.inverted;
  const [is, was] = [speaker.now.polarity, speaker.before.polarity];
  return is === 'cannot tell' || was === 'cannot tell' ? null : is !== was;
}
