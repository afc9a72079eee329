import { msg, str } from '@lit/localize';
import type { SessionDocument } from '../session/document';
import { sameValue } from '../session/file/same-value';
import { sentenceName } from '../proof/claim-answers';
import type { Channel, ChannelLabel, Layout } from '../system/channel';
import { listInWords } from '../system/list-in-words';
import { makeFinding } from './make-finding';
import type { VisitFinding } from './visits';

/** Which speakers came and went, and whether the plan and the processor's sheet are as they were. */
export function compareSystems(
  now: SessionDocument,
  before: SessionDocument,
  layout: Layout,
  other: Layout,
): VisitFinding[] {
  return [
    ...speakers(layout, other),
    ...places(layout, other, now, before),
    same('plan', 'room', msg('The room of the plan'), now.system.room, before.system.room),
    same('plan', 'seats', msg('The seats of the plan'), now.system.seats, before.system.seats),
    sheets(now, before),
  ];
}

function speakers(layout: Layout, other: Layout): VisitFinding[] {
  const [added, removed] = [missingIn(other, layout), missingIn(layout, other)];
  const one = (channel: Channel, what: string): VisitFinding =>
    makeFinding('speakers', channel.label, {
      channels: [channel.label],
      verdict: 'changed',
      sentence: msg(str`${sentenceName(channel.name)} (${channel.label}) was ${what} since.`),
    });
  if (added.length + removed.length > 0) {
    return [
      ...added.map((channel) => one(channel, 'added')),
      ...removed.map((channel) => one(channel, msg('taken out'))),
    ];
  }
  const sentence = msg(str`The speakers are those of then: ${layout.title}.`);
  return [makeFinding('speakers', 'all', { verdict: 'as it was', sentence })];
}

/** Channels of a layout that another one has not. */
function missingIn(layout: Layout, of: Layout): Channel[] {
  return of.channels.filter(({ label }) => layout.channels.every((one) => one.label !== label));
}

function places(
  layout: Layout,
  other: Layout,
  { system: is }: SessionDocument,
  { system: was }: SessionDocument,
): VisitFinding[] {
  const bounces = (list: readonly ChannelLabel[], label: ChannelLabel) => list.includes(label);
  const moved = layout.channels
    .map(({ label }) => label)
    .filter((label) => other.channels.some((channel) => channel.label === label))
    .filter(
      (label) =>
        !sameValue(is.places[label], was.places[label]) ||
        bounces(is.bounced, label) !== bounces(was.bounced, label),
    );
  return [
    makeFinding('plan', 'places', {
      channels: moved,
      verdict: moved.length === 0 ? 'as it was' : 'changed',
      sentence:
        moved.length === 0
          ? msg('The plan has every speaker where it had it.')
          : msg(str`The plan has ${listInWords(moved)} elsewhere than then.`),
    }),
  ];
}

function same(
  matter: 'plan' | 'processor',
  about: string,
  what: string,
  is: unknown,
  was: unknown,
): VisitFinding {
  const isSame = sameValue(is, was);
  const sentence = `${what} ${about === 'seats' ? 'are' : 'is'} ${isSame ? msg('as then') : msg('not what it was')}.`;
  return makeFinding(matter, about, {
    verdict: isSame ? 'as it was' : 'changed',
    sentence: about === 'seats' && !isSame ? msg(str`${what} are others than then.`) : sentence,
  });
}

function sheets(now: SessionDocument, before: SessionDocument): VisitFinding {
  const [is, was] = [now.sheet?.name ?? msg('none'), before.sheet?.name ?? msg('none')];
  if (is !== was) {
    return makeFinding('processor', 'sheet', {
      verdict: 'changed',
      sentence: msg(str`Processor sheet: ${is}; then: ${was}.`),
    });
  }
  const steps = now.sheet ? [now.sheet, before.sheet] : [now.processor, before.processor];
  return same(
    'processor',
    'sheet',
    now.sheet ? msg(str`The processor sheet ${is}`) : msg('What is known of the processor'),
    ...(steps as [unknown, unknown]),
  );
}
