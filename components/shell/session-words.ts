import { msg, str } from '@lit/localize';
import type { SessionProgress, SessionSummary } from '../../src/session/shelf/summarise-session';
import { numberText, thinSpace } from '../../src/locale/number-text';

const progressWords: Readonly<Record<SessionProgress, string>> = {
  new: 'new',
  planned: 'planned',
  get wired() {
    return msg('wiring checked');
  },
  probed: 'probed',
};

/** What the list says of a session under its name: layout, how far it is, takes and their size. */
export function sessionFacts({ layout, progress, takes, soundBytes }: SessionSummary): string {
  const count = takes === 1 ? msg('1 take') : msg(str`${takes} takes`);
  const size = takes === 0 ? msg('no takes') : msg(str`${count}, about ${sizeText(soundBytes)}`);
  return [layout, progressWords[progress], size].join(' · ');
}

/** A size as a person reads it: 12 MB, 1.3 GB. */
export function sizeText(bytes: number): string {
  const megabytes = bytes / 1e6;
  return megabytes < 1000
    ? `${numberText(Math.max(1, megabytes))}${thinSpace}MB`
    : `${numberText(megabytes / 1000, 1)}${thinSpace}GB`;
}
