import { lengthText } from '../locale/length-text';
import { stateWord } from '../locale/state-words';
import { withUnit } from '../locale/number-text';
import { msg, str } from '@lit/localize';
import { sayHz, sayNumber } from '../proposal/phrases';
import type { SessionDocument } from '../session/document';
import { sameValue } from '../session/file/same-value';
import { listInWords } from '../system/list-in-words';
import { makeFinding } from './make-finding';
import type { VisitFinding } from './visits';

/** What was typed, chosen and declared in force at the two visits. */
export function compareSettings(now: SessionDocument, before: SessionDocument): VisitFinding[] {
  return [...typed(now, before), chosen(now, before), inForce(now, before)];
}

function typed({ typed: is }: SessionDocument, { typed: was }: SessionDocument): VisitFinding[] {
  const ids = [...new Set([...Object.keys(was), ...Object.keys(is)])].sort();
  const changed = ids.filter((id) => is[id] !== was[id]);
  if (changed.length === 0) {
    const sentence =
      ids.length === 0
        ? msg('No setting is ticked as typed at either visit.')
        : msg(str`All ${ids.length} settings ticked as typed are those of then.`);
    return [makeFinding('settings', 'typed', { verdict: 'as it was', sentence })];
  }
  const empty =
    Object.keys(is).length === 0 ? 'here' : Object.keys(was).length === 0 ? 'then' : null;
  if (empty !== null) {
    return [
      makeFinding('settings', 'typed', {
        verdict: 'cannot tell',
        sentence: msg(
          str`Whether the settings are those of then cannot be told: none is ticked as typed ${empty}.`,
        ),
        action:
          empty === 'here'
            ? msg('Tick in Propose what is typed.')
            : msg('Tick in Propose, at every visit, what is typed.'),
      }),
    ];
  }
  return changed.map((id) =>
    makeFinding('settings', id, {
      verdict: 'changed',
      sentence: msg(
        str`Typed as ${id}: ${is[id] ?? msg('nothing')}; then: ${was[id] ?? msg('nothing')}.`,
      ),
    }),
  );
}

function chosen(now: SessionDocument, before: SessionDocument): VisitFinding {
  const crossovers = differences(now.chosenCrossoverHz, before.chosenCrossoverHz, sayHz);
  const isSame = sameValue(now.choices, before.choices);
  const others = isSame ? [] : [msg('other choices')];
  const all = [...crossovers.map((one) => msg(str`crossover of ${one}`)), ...others];
  return makeFinding('settings', 'chosen', {
    verdict: all.length === 0 ? 'as it was' : 'changed',
    sentence:
      all.length === 0
        ? msg('What was chosen in Propose is what was chosen then.')
        : msg(str`Chosen in Propose otherwise than then: ${listInWords(all)}.`),
  });
}

function inForce(
  { inForce: is }: SessionDocument,
  { inForce: was }: SessionDocument,
): VisitFinding {
  const metres = (value: number): string => lengthText(value);
  const db = (value: number): string => withUnit(sayNumber(value, 1), 'dB');
  const hz = (value: number | null): string => (value === null ? msg('full range') : sayHz(value));
  const all = [
    ...differences(is.distanceMetres, was.distanceMetres, metres).map((one) =>
      msg(str`distance of ${one}`),
    ),
    ...differences(is.trimDb, was.trimDb, db).map((one) => msg(str`trim of ${one}`)),
    ...differences(is.crossoverHz, was.crossoverHz, hz).map((one) => msg(str`crossover of ${one}`)),
    ...(is.equaliser === was.equaliser
      ? []
      : [msg(str`equaliser ${stateWord(is.equaliser)}, then ${stateWord(was.equaliser)}`)]),
  ];
  return makeFinding('settings', 'in force', {
    verdict: all.length === 0 ? 'as it was' : 'changed',
    sentence:
      all.length === 0
        ? msg('What is declared in force is what was then.')
        : msg(str`Declared in force otherwise than then: ${listInWords(all)}.`),
  });
}

/** "FL 2.50 m, then 2.40 m" for each key whose values differ. */
function differences<Value>(
  is: Readonly<Partial<Record<string, Value>>>,
  was: Readonly<Partial<Record<string, Value>>>,
  say: (value: Value) => string,
): string[] {
  const text = (value: Value | undefined): string =>
    value === undefined ? msg('not said') : say(value);
  return [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter((key) => is[key] !== was[key])
    .map((key) => msg(str`${key} ${text(is[key])} (then ${text(was[key])})`));
}
