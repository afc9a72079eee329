import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { SessionDocument, TakeRecord } from '../../../src/session/document';
import { compareVisits } from '../../../src/visits/compare-visits';
import type { VisitComparison, VisitFinding } from '../../../src/visits/visits';
import type { ChannelLabel } from '../../../src/system/channel';
import { offsetOf } from '../../../src/system/speaker-offset';
import { inventedReadings, layout524 } from '../../components/fixtures';
import { sampleDocument, sampleTake } from '../../components/sample-session';

/** A change of one reading, as a test tells it. */
export type Told = Readonly<Partial<Record<ChannelLabel, (was: ChannelReading) => ChannelReading>>>;

/** A real session of a 5.2.4 with one take at Seat 1, made by its own visit. */
export function visit(
  id: string,
  told: Told = {},
  changes: Partial<SessionDocument> = {},
): SessionDocument {
  const day = id === 'then' ? '2025-01-01' : '2025-06-01';
  const readings = toldReadings(told);
  const take: TakeRecord = {
    ...sampleTake('5.2.4'),
    id: `take of ${id}`,
    captureId: `capture of ${id}`,
    startedAt: `${day}T00:01:00.000Z`,
    rig: 'live',
    simulated: false,
    readings,
  };
  return {
    ...sampleDocument('5.2.4'),
    id,
    name: `Visit ${id}`,
    rig: 'live',
    takes: [take],
    ...changes,
  };
}

/** Readings with the changes that are told. */
export function toldReadings(told: Told, every = (was: ChannelReading) => was): Readings {
  const whole = inventedReadings(layout524, { simulated: false, takeId: 'told' });
  const channels = whole.channels.map((reading) =>
    every(told[reading.channel]?.(reading) ?? reading),
  );
  return { ...whole, channels };
}

/** The session with other readings of its one take. */
export function withReadingsOf(document: SessionDocument, readings: Readings): SessionDocument {
  return { ...document, takes: document.takes.map((take) => ({ ...take, readings })) };
}

export function farther(metres: number) {
  return (was: ChannelReading): ChannelReading => ({
    ...was,
    arrivalSeconds: was.arrivalSeconds === null ? null : was.arrivalSeconds + metres / 343.2,
    distanceMetres: was.distanceMetres === null ? null : was.distanceMetres + metres,
    distanceInterval: was.distanceInterval && [
      was.distanceInterval[0] + metres,
      was.distanceInterval[1] + metres,
    ],
  });
}

export function louder(db: number) {
  return (was: ChannelReading): ChannelReading => ({
    ...was,
    levelDb: was.levelDb === null ? null : was.levelDb + db,
  });
}

/** Every main as a microphone so far to the right and back hears it, FL's distance by its tape. */
export function microphoneAt(rightMetres: number, backMetres: number): Told {
  const change = (label: ChannelLabel, was: ChannelReading): number => {
    const channel = layout524.channels.find((one) => one.label === label);
    if (!channel || was.distanceMetres === null) return 0;
    const place = offsetOf({ ...channel, distanceMetres: was.distanceMetres });
    const [x, y] = [place.rightMetres - rightMetres, place.backMetres - backMetres];
    return Math.hypot(x, y, place.upMetres) - was.distanceMetres;
  };
  const [first] = inventedReadings(layout524).channels;
  const tape = first ? change('FL', first) : 0;
  const told = layout524.channels.map(
    ({ label }) =>
      [label, (was: ChannelReading) => farther(change(label, was) - tape)(was)] as const,
  );
  return Object.fromEntries(told);
}

export const then = visit('then');

/** What is found of a visit beside the one of then. */
export function beside(now: SessionDocument, before = then): VisitComparison {
  return compareVisits(now, before);
}

export function changed({ findings }: VisitComparison): string[] {
  return findings.filter(({ verdict }) => verdict === 'changed').map(({ id }) => id);
}

/** The finding of an id. */
export function finding({ findings }: VisitComparison, id: string): VisitFinding {
  const found = findings.find((one) => one.id === id);
  if (!found)
    throw new Error(`${id} was not found among ${findings.map((one) => one.id).join('; ')}`);
  return found;
}
