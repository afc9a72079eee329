import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { sayNumber } from '../proposal/phrases';
import { sentenceName } from './claim-answers';
import type { Findings } from './findings';
import { figureAround, judgeInterval } from './judge-interval';
import { makeLine, playAgain } from './make-line';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** Arrivals are equal within this, ms, beside the processor's steps. */
const allowedMs = 0.1;
/** A sub's time is its phase in the bass: a twentieth of a period at 100 Hz more does no harm. */
const moreForSubsMs = 0.4;
/** Processors delay in whole samples of 48 kHz. */
const sampleMs = 1000 / 48000;

/**
 * Whether a speaker arrives with the others at the seat. Mains are held against the middle of the
 * mains, a sub against where its setting puts it beside them.
 */
export function claimArrival(proof: ProofCase, findings: Findings, one: ProvedChannel): ProofLine {
  const { label, name, kind } = one.channel;
  const found = kind === 'sub' ? subTime(findings, one) : mainTime(findings, one);
  if (!found) {
    return makeLine('arrival', label, [label], {
      verdict: 'cannot tell',
      sentence: msg(str`When ${name} arrives beside the others cannot be told.`),
      action:
        kind === 'sub'
          ? msg('Read all subs in Probe with a distance each, then prove again.')
          : playAgain(),
    });
  }
  const allowed = allowedArrivalMs(proof, kind === 'sub');
  const half = found.half + findings.movedMetres / proof.metresPerSecond;
  const figure = figureAround(1000 * found.seconds, 1000 * half, allowed, 'ms');
  const verdict = judgeInterval(figure);
  const amount = withUnit(sayNumber(Math.abs(figure.value), 2), 'ms');
  const when = figure.value < 0 ? 'early' : 'late';
  const sentences = {
    pass: msg(str`${sentenceName(name)} arrives with the others, to ${amount}.`),
    fail: msg(str`${sentenceName(name)} arrives ${amount} too ${when}.`),
    'cannot tell': msg(
      str`${sentenceName(name)} arrives ${amount} ${when}, give or take ${withUnit(sayNumber(1000 * half, 2), 'ms')}.`,
    ),
  } as const;
  return makeLine('arrival', label, [label], { verdict, sentence: sentences[verdict], figure });
}

/** How far an arrival may be off, ms: own rounding and that of what it is held against included. */
export function allowedArrivalMs({ steps, metresPerSecond }: ProofCase, isSub: boolean): number {
  const rounding = (1000 * steps.distanceStepMetres) / metresPerSecond + sampleMs;
  return allowedMs + rounding + (isSub ? moreForSubsMs : 0);
}

function mainTime({ arrivals, middleSeconds }: Findings, { channel }: ProvedChannel) {
  const arrival = arrivals.get(channel.label);
  return arrival ? { seconds: arrival.seconds - middleSeconds, half: arrival.half } : null;
}

function subTime({ subFits, lates, middleLate }: Findings, { channel }: ProvedChannel) {
  const fit = subFits.get(channel.label);
  const late = lates.get(channel.label);
  return fit && late !== undefined ? { seconds: late - middleLate, half: fit.halfSeconds } : null;
}
