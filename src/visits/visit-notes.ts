import { msg, str } from '@lit/localize';
import { listInWords } from '../system/list-in-words';
import type { VisitFinding, VisitMatter, VisitName } from './visits';

/** A speaker that changed in so many of these is hardly the speaker it was. */
const leastMatters = 3;
const own: readonly VisitMatter[] = ['distance', 'level', 'roll-off', 'response', 'polarity'];

/** What is to be said of a comparison as a whole. */
export function visitNotes(
  findings: readonly VisitFinding[],
  now: VisitName,
  before: VisitName,
): string[] {
  const isTurnedRound =
    now.takenAt !== null && before.takenAt !== null && before.takenAt > now.takenAt;
  return [
    ...(isTurnedRound ? [msg('The session called earlier was taken later than this one.')] : []),
    ...otherSpeakers(findings),
  ];
}

function otherSpeakers(findings: readonly VisitFinding[]): string[] {
  const changed = findings.filter(
    ({ verdict, matter, channels }) =>
      verdict === 'changed' && own.includes(matter) && channels.length === 1,
  );
  const labels = [...new Set(changed.flatMap(({ channels }) => channels))].filter((label) => {
    const matters = changed.flatMap(({ channels, matter }) =>
      channels.includes(label) ? [matter] : [],
    );
    return new Set(matters).size >= leastMatters;
  });
  if (labels.length === 0) return [];
  const said =
    labels.length === 1
      ? msg('changed in so much that another speaker may play on its output')
      : msg('changed in so much that other speakers may play on their outputs');
  return [msg(str`${listInWords(labels)} ${said}: check the wiring in Patch.`)];
}
