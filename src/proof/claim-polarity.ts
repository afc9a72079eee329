import { msg, str } from '@lit/localize';
import { sentenceName } from './claim-answers';
import type { Findings } from './findings';
import { makeLine } from './make-line';
import type { ProofLine } from './proof';
import type { ProofCase, ProvedChannel } from './proof-case';

/** A sign is believed only from responses this much alike. */
const surelyAlike = 0.8;

/**
 * Whether a speaker pushes when the signal does: by its sign beside that of before, where both are
 * known, else by the reading itself. Of a sub whether it is turned as it was to be.
 */
export function claimPolarity(
  { typed }: ProofCase,
  { signs, subFits }: Findings,
  one: ProvedChannel,
): ProofLine {
  const { label, name, kind } = one.channel;
  const line = (rest: Parameters<typeof makeLine>[3]): ProofLine =>
    makeLine('polarity', label, [label], rest);
  const wanted = typed.inverted.includes(label) ? 'inverted' : 'normal';
  const fit = (kind === 'sub' ? subFits : signs).get(label);
  const known = fit && fit.agreement >= surelyAlike ? fit : null;
  if (kind === 'sub') {
    if (!known) {
      return line({
        verdict: 'cannot tell',
        sentence: msg(
          str`Whether ${name} is turned as it should be cannot be told: it does not sound like before.`,
        ),
        action: msg(str`Read ${name} in Probe and prove it again.`),
      });
    }
    const other = wanted === 'normal' ? 'inverted' : 'normal';
    return known.inverted
      ? failed(
          line,
          msg(str`${sentenceName(name)} is turned over against its setting.`),
          label,
          other,
          wanted,
        )
      : line({
          verdict: 'pass',
          sentence: msg(str`${sentenceName(name)} is turned as it should be.`),
        });
  }
  const was = one.before?.polarity ?? 'cannot tell';
  const turned = known ? known.inverted !== (wanted === 'inverted') : null;
  const now =
    turned === null || was === 'cannot tell'
      ? (one.after?.polarity ?? 'cannot tell')
      : turned === (was === 'inverted')
        ? 'normal'
        : 'inverted';
  if (now === 'cannot tell') {
    return line({
      verdict: 'cannot tell',
      sentence: msg(str`The polarity of ${name} cannot be told from the seat.`),
      action: msg(str`Hold the microphone close to ${name} and take it there.`),
    });
  }
  return now === 'normal'
    ? line({
        verdict: 'pass',
        sentence: msg(str`${sentenceName(name)} pushes when the signal does.`),
      })
    : failed(
        line,
        msg(
          str`${sentenceName(name)} pulls when the signal pushes: with the amplifier off, swap its two wires at one end.`,
        ),
        label,
        'inverted',
        'normal',
      );
}

function failed(
  line: (rest: Parameters<typeof makeLine>[3]) => ProofLine,
  sentence: string,
  label: ProvedChannel['channel']['label'],
  from: string,
  to: string,
): ProofLine {
  return {
    ...line({ verdict: 'fail', sentence }),
    slip: 'inverted',
    changes: [{ setting: 'polarity', channels: [label], group: null, from, to, unit: null }],
  };
}
