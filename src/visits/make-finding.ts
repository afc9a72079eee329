import { msg, str } from '@lit/localize';
import type { ChannelLabel } from '../system/channel';
import type { VisitFinding, VisitMatter } from './visits';

type Rest = Pick<VisitFinding, 'verdict' | 'sentence'> &
  Partial<Pick<VisitFinding, 'figure' | 'action' | 'position' | 'channels'>>;

/** A finding about a matter; `about` tells it from others of the matter, such as a channel. */
export function makeFinding(matter: VisitMatter, about: string, rest: Rest): VisitFinding {
  const { position = null, channels = [], figure = null, verdict, sentence } = rest;
  return {
    id: [matter, about, position ?? ''].filter((part) => part !== '').join(' · '),
    matter,
    position,
    channels,
    verdict,
    sentence,
    figure,
    action: verdict === 'cannot tell' ? (rest.action ?? takeAgain(position)) : null,
  };
}

/** A finding about one speaker at a position. */
export function speakerFinding(
  matter: VisitMatter,
  label: ChannelLabel,
  position: string,
  rest: Omit<Rest, 'position' | 'channels'>,
): VisitFinding {
  return makeFinding(matter, label, { ...rest, position, channels: [label] });
}

function takeAgain(position: string | null): string {
  return position === null ? msg('Take the system again.') : msg(str`Take ${position} again.`);
}
