import { joinReadings } from '../reading/join-readings';
import type { ChannelReading, Readings } from '../reading/reading';
import type { Position, SessionDocument, TakeRecord } from '../session/document';
import { takesHere } from '../session/take-record';
import type { Channel, ChannelLabel, Layout } from '../system/channel';
import { placedLayout } from '../system/declared-system';
import { layoutFromName } from '../system/layout';
import { isTrouble } from '../trouble';

/** A speaker that was heard at one place at both visits. */
export interface PairedSpeaker {
  readonly channel: Channel;
  readonly now: ChannelReading;
  readonly before: ChannelReading;
}

/** One place of the microphone at both visits. */
export interface PairedPosition {
  readonly position: Position;
  readonly now: Readings;
  readonly before: Readings;
  /** Speakers both sessions have and both heard, in the order of the layout. */
  readonly speakers: readonly PairedSpeaker[];
  /** Speakers both sessions have, of which one at least was not heard here. */
  readonly unheard: readonly ChannelLabel[];
}

/** What was read at one position of a session. */
export interface VisitedPosition {
  readonly position: Position;
  /** Takes that are read, oldest first; of one layout and one rig. */
  readonly takes: readonly TakeRecord[];
}

/** The layout of a session, its speakers where it declares them. RangeError for a broken name. */
export function visitLayout({ layout: name, system }: SessionDocument): Layout {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return placedLayout(layout, system);
}

/** Positions of a session with readings of the system as it is planned, in the order of takes. */
export function visitedPositions(document: SessionDocument): VisitedPosition[] {
  const positions = new Map(document.takes.map(({ position }) => [position.id, position]));
  return [...positions.values()].flatMap((position): VisitedPosition[] => {
    const takes = takesHere({ ...document, position }).filter(
      ({ readings, outdated }) => readings && !outdated,
    );
    return takes.length === 0 ? [] : [{ position, takes }];
  });
}

/** Whether two positions of two sessions are one place: the same speaker close by, or one name. */
export function isSamePlace(one: Position, other: Position): boolean {
  if (one.kind !== other.kind) return false;
  if (one.close && other.close) {
    return (
      one.close.channel === other.close.channel &&
      one.close.coneOnly === other.close.coneOnly &&
      (one.close.port === undefined) === (other.close.port === undefined)
    );
  }
  return plainName(one) === plainName(other);
}

function plainName({ name }: Position): string {
  return name.trim().toLowerCase();
}

/** Pairs what was read at one place. Both lists hold at least one take. */
export function pairPosition(
  layout: Layout,
  other: Layout,
  now: VisitedPosition,
  before: VisitedPosition,
): PairedPosition {
  const [is, was] = [joined(now), joined(before)];
  const common = layout.channels.filter(({ label }) =>
    other.channels.some((channel) => channel.label === label),
  );
  const speakers = common.flatMap((channel): PairedSpeaker[] => {
    const [one, two] = [heard(is, channel.label), heard(was, channel.label)];
    return one && two ? [{ channel, now: one, before: two }] : [];
  });
  const unheard = common
    .map(({ label }) => label)
    .filter((label) => !speakers.some(({ channel }) => channel.label === label));
  return { position: now.position, now: is, before: was, speakers, unheard };
}

function joined({ takes }: VisitedPosition): Readings {
  return joinReadings(takes.flatMap(({ readings }) => readings ?? []));
}

/** A reading without a fault that gave a level. */
function heard({ channels }: Readings, label: ChannelLabel): ChannelReading | null {
  const found = channels.find(({ channel }) => channel === label);
  return found && found.levelDb !== null && found.faults.length === 0 ? found : null;
}
