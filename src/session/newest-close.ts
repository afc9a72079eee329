import type { ChannelReading } from '../reading/reading';
import type { KeptClose, KeptPort } from '../reading/rolloff-together';
import { isDamaged } from '../reading/segments-to-repeat';
import type { RigKind } from '../rig/port';
import type { ChannelLabel } from '../system/channel';
import type { SessionDocument, TakeRecord } from './document';

/**
 * What was heard last with the microphone held to one of some speakers of one model: all of a box,
 * or its cone and its port, else its cone alone. Null when nothing was. A port alone tells nothing.
 */
export function newestClose(
  document: SessionDocument,
  labels: readonly ChannelLabel[],
  rig: RigKind,
): KeptClose | null {
  const heard = document.takes.flatMap((take) => heardIn(take, document, labels, rig));
  const cones = heard.filter(({ take }) => !take.position.close?.port).toReversed();
  const all = cones.map((cone): KeptClose => {
    const { channel, bass, take } = cone;
    const coneOnly = take.position.close?.coneOnly ?? false;
    const port = coneOnly ? portOf(cone, heard) : null;
    return { channel, bass, coneOnly, port };
  });
  return all.find(({ coneOnly, port }) => !coneOnly || port !== null) ?? all[0] ?? null;
}

interface Heard {
  readonly take: TakeRecord;
  readonly channel: ChannelLabel;
  readonly reading: ChannelReading;
  readonly bass: NonNullable<ChannelReading['bassBands']>;
}

/** What a take tells of the speaker the microphone was held to. */
function heardIn(
  take: TakeRecord,
  document: SessionDocument,
  labels: readonly ChannelLabel[],
  rig: RigKind,
): Heard[] {
  const { position, schedule, readings, outdated, purpose = 'probe' } = take;
  const { close } = position;
  const counts =
    position.kind === 'close' && schedule.layout === document.layout && purpose === 'probe';
  if (!counts || !close || !labels.includes(close.channel)) return [];
  if (take.rig !== rig || !readings || outdated) return [];
  const reading = readings.channels.find(({ channel }) => channel === close.channel);
  if (!reading?.bassBands || isDamaged(reading)) return [];
  return [{ take, channel: close.channel, reading, bass: reading.bassBands }];
}

/** The newest capture of the same speaker's port, with both basses to sum; null when one lacks. */
function portOf(cone: Heard, all: readonly Heard[]): KeptPort | null {
  const port = all.findLast(
    ({ channel, take, reading }) =>
      channel === cone.channel && take.position.close?.port && reading.bass,
  );
  const size = port?.take.position.close?.port;
  const [coneHeard, portHeard] = [cone.reading.bass, port?.reading.bass];
  if (!port || !size || !coneHeard || !portHeard) return null;
  const coneLouderDb = (cone.take.gainDb ?? 0) - (port.take.gainDb ?? 0);
  return { size, bass: port.bass, coneHeard, portHeard, coneLouderDb };
}
