import { msg, str } from '@lit/localize';
import { findAgain } from '../../rig/live/list-devices';
import type { Devices } from '../bench';
import type { ChosenDevice, SessionDocument } from '../document';

type Found = Pick<Devices, 'microphones' | 'outputs'>;

/** What came and what went between two looks, in sentences; null when nothing with a name did. */
export function tellChange(
  before: Found,
  now: Found,
  chosen: Pick<SessionDocument['live'], 'microphone' | 'output'>,
): string | null {
  const sentences = [
    ...tellKind('microphone', before.microphones, now.microphones, chosen.microphone),
    ...tellKind('output', before.outputs, now.outputs, chosen.output),
  ];
  return sentences.length > 0 ? sentences.join(' ') : null;
}

function tellKind(
  kind: 'microphone' | 'output',
  before: readonly ChosenDevice[],
  now: readonly ChosenDevice[],
  chosen: ChosenDevice | null,
): string[] {
  const was = chosen && findAgain(chosen, before);
  const is = chosen && findAgain(chosen, now);
  const gone = missing(before, now).map((one) =>
    one.id === was?.id && !is
      ? msg(str`The chosen ${kind} “${one.name}” went away: plug it in again or choose another.`)
      : msg(str`The ${kind} “${one.name}” went away.`),
  );
  const come = missing(now, before).map((one) =>
    one.id === is?.id && !was
      ? msg(str`The chosen ${kind} “${one.name}” is back.`)
      : msg(str`The ${kind} “${one.name}” is there now.`),
  );
  return [...gone, ...come];
}

/** Named devices of `some` that are not among `others`, by name: ids rotate. */
function missing(some: readonly ChosenDevice[], others: readonly ChosenDevice[]): ChosenDevice[] {
  const names = new Set(others.map(({ name }) => name));
  // While names are hidden, nothing can be told.
  if (others.length > 0 && others.every(({ name }) => name === '')) return [];
  return some.filter(({ name }) => name !== '' && !names.has(name));
}
