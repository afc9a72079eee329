import { msg, str } from '@lit/localize';
import { sayHz } from '../proposal/phrases';
import { diagnoseCrossovers } from './diagnose-crossovers';
import { diagnoseDistances } from './diagnose-distances';
import { diagnoseShaping } from './diagnose-shaping';
import { diagnoseSubs } from './diagnose-subs';
import { diagnoseTrims } from './diagnose-trims';
import { crossoverOf, provedChannel } from './expect-bass';
import { explainLine, type Cause } from './explain-line';
import type { Findings } from './findings';
import type { ProofLine } from './proof';
import type { ProofCase } from './proof-case';

/** The lines, those that failed with the mistake that does this and the setting to change. */
export function diagnose(
  proof: ProofCase,
  findings: Findings,
  lines: readonly ProofLine[],
): readonly ProofLine[] {
  lines = diagnoseSubs(proof, findings, lines);
  lines = diagnoseShaping(proof, findings, lines);
  lines = diagnoseDistances(proof, findings, lines);
  lines = diagnoseTrims(proof, lines);
  lines = diagnoseCrossovers(proof, findings, lines);
  const known = lines;
  return lines.map((line) => explainLine(line, inherited(proof, known, line) ?? left(proof, line)));
}

/** A sum is wrong because something else is: the cause of another line of the same main, or of a sub. */
function inherited(proof: ProofCase, lines: readonly ProofLine[], line: ProofLine): Cause | null {
  const isSum = line.claim === 'crossover' || line.claim === 'redirected bass';
  const subs = proof.subs.map(({ channel }) => channel.label);
  const concerns = (other: ProofLine): boolean =>
    other.channels.every(
      (label) => line.channels.includes(label) || (isSum && subs.includes(label)),
    );
  const causes = lines.filter(
    (other) =>
      other !== line && other.changes.length > 0 && other.claim !== 'LFE' && concerns(other),
  );
  if (causes.length === 0) return null;
  const changes = causes.flatMap((cause) => cause.changes);
  const distinct = changes.filter(
    (one, at) => changes.findIndex((other) => JSON.stringify(other) === JSON.stringify(one)) === at,
  );
  return {
    slip: causes[0]?.slip ?? null,
    changes: distinct,
    sentence: msg('What the other failed lines tell to change is likely to mend it.'),
  };
}

/** What to look at where no mistake explains a failure. */
function left(proof: ProofCase, { claim, channels }: ProofLine): Cause | null {
  const [label] = channels;
  const one = label === undefined ? null : provedChannel(proof, label);
  if (!one || label === undefined) return null;
  if (claim === 'level') {
    const trim = proof.typed.trimDb[label] ?? 0;
    return {
      slip: null,
      changes: [
        {
          setting: 'trim',
          channels: [label],
          group: null,
          from: trim,
          to: msg('by ear'),
          unit: 'dB',
        },
      ],
      sentence: msg(
        'Its trim does what it says, and is not enough: look for a gain at its amplifier.',
      ),
    };
  }
  if (claim === 'arrival') {
    const to = proof.typed.distanceMetres[label] ?? msg('not known');
    return {
      slip: null,
      changes: [{ setting: 'distance', channels: [label], group: null, from: null, to, unit: 'm' }],
      sentence: msg('Look at its distance.'),
    };
  }
  const hz = crossoverOf(proof, one);
  if (hz === null) return null;
  const { group } = one.channel;
  return {
    slip: null,
    changes: [{ setting: 'crossover', channels: [], group, from: null, to: hz, unit: 'Hz' }],
    sentence: msg(str`Look whether its crossover is ${sayHz(hz)}, and how the subs are set.`),
  };
}
