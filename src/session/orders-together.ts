import type { ChannelReading } from '../reading/reading';
import type { RigKind } from '../rig/port';
import type { TogetherOrder } from '../reading/rolloff-together';
import { isDamaged } from '../reading/segments-to-repeat';
import type { ChannelLabel, Layout } from '../system/channel';
import { modelsOf } from '../system/speaker-models';
import type { SessionDocument, TakeRecord } from './document';
import { newestClose } from './newest-close';
import { takesHere } from './take-record';

/**
 * What can be read together in a session: for each model of the layout, the newest whole bass of
 * each of its speakers at each seat; or, where one of them was heard close by, that alone, because
 * the room is hardly in it. Takes of another rig than those at the current seat are left
 * out, and so is what was read through a crossover. A model of which one bass is known makes an
 * order only when its sheet is. Empty while the microphone stands close to a speaker.
 */
export function ordersTogether(document: SessionDocument, layout: Layout): TogetherOrder[] {
  const rig = takesHere(document).findLast(({ readings }) => readings !== null)?.rig;
  if (rig === undefined || document.position.kind !== 'seat') return [];
  const seats = takesBySeat(document, rig);
  return modelsOf(layout, document.models).flatMap(({ channels, sheetF3Hz }) => {
    const labels = channels.map(({ label }) => label);
    const isSub = channels.every(({ kind }) => kind === 'sub');
    const close = newestClose(document, labels, rig);
    if (close) return [{ channels: labels, isSub, sheetF3Hz, heard: [], close }];
    const heard = seats.flatMap((takes) =>
      labels.flatMap((channel) => {
        const bass = newestBass(takes, channel);
        const seat = takes[0]?.position.id ?? '';
        return bass ? [{ channel, seat, bass }] : [];
      }),
    );
    if (heard.length < (sheetF3Hz === null ? 2 : 1)) return [];
    return [{ channels: labels, isSub, sheetF3Hz, heard }];
  });
}

/** Read takes of the layout, one list a seat, oldest first. */
function takesBySeat(document: SessionDocument, rig: RigKind): TakeRecord[][] {
  const found = new Map<string, TakeRecord[]>();
  for (const take of document.takes) {
    const { position, schedule, readings, outdated } = take;
    const counts =
      position.kind === 'seat' && schedule.layout === document.layout && take.purpose !== 'prove';
    if (!counts || take.rig !== rig || !readings || outdated) continue;
    found.set(position.id, [...(found.get(position.id) ?? []), take]);
  }
  return [...found.values()];
}

function newestBass(
  takes: readonly TakeRecord[],
  label: ChannelLabel,
): ChannelReading['bassBands'] | null {
  const readings = takes.flatMap(
    (take) => take.readings?.channels.filter(({ channel }) => channel === label) ?? [],
  );
  return (
    readings.findLast((reading) => reading.bassBands && !isDamaged(reading))?.bassBands ?? null
  );
}
