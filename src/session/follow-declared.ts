import { rederiveDistances } from '../reading/rederive-distances';
import {
  nothingInForce,
  settingsInForce,
  usualFilters,
  type SettingsInForce,
} from '../system/declared-settings';
import type { SessionDocument, TakeRecord } from './document';
import { takesHere } from './take-record';

/**
 * The document with its readings brought up to date after a change: distances are derived anew from
 * temperature and, at the current position, tape distance; takes whose audio must be read again,
 * because of the microphone's calibration, settings in force or a loopback, are marked outdated.
 */
export function followDeclared(before: SessionDocument, after: SessionDocument): SessionDocument {
  if (after === before || after.id !== before.id) return after;
  const conditions = changed(before.conditions, after.conditions);
  const calibration = before.microphone.calibration !== after.microphone.calibration;
  if (!conditions && !calibration && before.takes === after.takes) return after;
  const known = new Map(before.takes.map((take) => [take.id, take]));
  let same = true;
  const takes = after.takes.map((take) => {
    const was = known.get(take.id);
    if (!take.readings || was?.readings !== take.readings) return take;
    const next = followOne(take, was, after, { conditions, calibration });
    same &&= next === take;
    return next;
  });
  return same ? after : { ...after, takes };
}

function followOne(
  take: TakeRecord,
  was: TakeRecord,
  { conditions, position }: SessionDocument,
  change: { readonly conditions: boolean; readonly calibration: boolean },
): TakeRecord {
  const { readings } = take;
  if (!readings) return take;
  if (changed(was.inForce, take.inForce) || (change.calibration && !take.simulated)) {
    return { ...take, outdated: true };
  }
  if (!change.conditions) return take;
  if (take.loopbackId !== null) return { ...take, outdated: true };
  const next = rederiveDistances(readings, {
    temperatureCelsius: conditions.temperatureCelsius,
    referenceDistanceMetres:
      take.position.id === position.id
        ? conditions.referenceDistanceMetres
        : readings.referenceDistanceMetres,
  });
  return next === readings ? take : { ...take, readings: next };
}

/** Real takes of the current position that were played with other settings than are declared now. */
export function takesWithOther(document: SessionDocument): TakeRecord[] {
  const now = settingsInForce(document);
  return takesHere(document).filter((take) => !take.simulated && !isAlike(take.inForce, now));
}

/** The document with what is declared now in force for the takes already made at this position. */
export function declareForTakes(document: SessionDocument): SessionDocument {
  const others = new Set(takesWithOther(document).map(({ id }) => id));
  if (others.size === 0) return document;
  const inForce = settingsInForce(document);
  const takes = document.takes.map((take) => (others.has(take.id) ? { ...take, inForce } : take));
  return { ...document, takes };
}

/** Whether two settings take the same out of a reading; filters count only with a crossover. */
function isAlike(was: SettingsInForce = nothing, now: SettingsInForce): boolean {
  const isCrossed = Object.values(now.crossoverHz).some((hz) => hz !== null);
  return !changed(was, isCrossed ? now : { ...now, filters: was.filters });
}

const nothing: SettingsInForce = { ...nothingInForce, filters: usualFilters };

/** Whether two plain values differ, whatever the order of their fields. */
function changed(a: unknown, b: unknown): boolean {
  return a !== b && sorted(a) !== sorted(b);
}

function sorted(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'object' && part !== null && !Array.isArray(part)
      ? Object.fromEntries(Object.entries(part).sort(([x], [y]) => (x < y ? -1 : 1)))
      : part,
  );
}
