import { numberText } from '../locale/number-text';
import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import type { ClimbEnd, ClimbResult } from './sound-level';

/** Numbers the sentence of a climb carries. */
export interface ClimbFacts {
  readonly end: ClimbEnd;
  readonly channel: string;
  readonly gainDb: number;
  readonly capDb: number;
  readonly marginDb: number | null;
  readonly wantedMarginDb: number;
  readonly bandHz: readonly [number, number];
  readonly peakDb: number;
  /** dB SPL, C weighting; null when not calibrated. */
  readonly soundLevelDb: number | null;
  readonly targetDb: number | null;
  readonly linearity: ClimbResult['linearity'];
}

/** Which of the two was met, or why the climb stopped, and what to do; with numbers. */
export function sayClimb(facts: ClimbFacts): string {
  const told = [sayEnd(facts)];
  if (facts.end !== 'unheard') told.push(sayLinearity(facts.linearity));
  return told.filter((sentence) => sentence !== '').join(' ');
}

function sayEnd(facts: ClimbFacts): string {
  const { channel, wantedMarginDb, targetDb } = facts;
  const gain = db(facts.gainDb);
  const [low, high] = facts.bandHz;
  const level =
    facts.soundLevelDb === null ? '' : `, ${withUnit(number(facts.soundLevelDb), 'dB(C)')}`;
  const reached =
    facts.marginDb === null ? msg('no margin') : withUnit(number(facts.marginDb), 'dB');
  const stand = msg(
    str`${channel} stands ${reached} over the noise from ${low} to ${high} Hz${level}`,
  );
  const wanted = withUnit(number(wantedMarginDb), 'dB');
  switch (facts.end) {
    case 'margin':
      return msg(str`The noise margin is met: at ${gain} ${stand}; ${wanted} were asked for.`);
    case 'target':
      return msg(
        str`The sound level is met: at ${gain} ${stand}; ${withUnit(number(targetDb ?? 0), 'dB(C)')} were asked for.`,
      );
    case 'cap':
      return msg(
        str`Stopped at the highest gain allowed: at ${gain} ${stand}, less than the ${wanted}${targetDb === null ? '' : msg(str` or ${withUnit(number(targetDb), 'dB(C)')}`)} asked for. Turn the amplifier up, or quieten the room.`,
      );
    case 'clipping':
      return msg(
        str`Stopped below clipping: at ${gain} the microphone's peaks reach ${withUnit(number(facts.peakDb), 'dB')} re full scale, and ${stand}; ${wanted} were asked for. Turn the microphone's gain down and climb again.`,
      );
    case 'too loud':
      return msg(
        str`Stopped because it is loud: at ${gain} ${stand}; no more than 95 dB(C) are played. Quieten the room if the margin of ${wanted} is wanted.`,
      );
    case 'unheard':
      return msg(
        str`${channel} was not heard over the noise from ${low} to ${high} Hz up to ${db(facts.capDb)}. Check that its amplifier is on and not muted, that the cable sits on the chosen output, that the right microphone is chosen, and its gain. The gain is back at ${gain}.`,
      );
  }
}

function sayLinearity(linearity: ClimbResult['linearity']): string {
  if (linearity === null) {
    return msg('The margin is too thin to tell whether something changes the level on the way.');
  }
  const step = withUnit(number(linearity.stepDb), 'dB');
  return linearity.passes
    ? msg(str`6 dB less out came back as ${step} less: nothing changes the level on the way.`)
    : msg(
        str`6 dB less out came back as ${step} less: something changes the level on the way. Switch off gain control, noise suppression and loudness or night modes.`,
      );
}

function db(value: number): string {
  return withUnit(number(value), 'dB');
}

/** To a tenth, with a true minus sign. */
function number(value: number): string {
  return numberText(value, 1);
}
