import { newSession } from './new-session';

/**
 * A stored session of an earlier version in the form of the newest; anything else as it is. Nothing
 * is judged here: what is damaged stays damaged, for the schema to refuse with its place.
 */
export function migrateSession(stored: unknown): unknown {
  return isRecord(stored) && stored['version'] === 1 ? fromVersion1(stored) : stored;
}

/** Version 1 knew one seat, devices by id alone and no calibration. */
function fromVersion1(stored: Fields): Fields {
  const fresh = newSession('', '');
  const { takes } = stored;
  return {
    ...stored,
    version: 2,
    live: isRecord(stored['live']) ? liveOf(stored['live'], fresh.live) : stored['live'],
    microphone: fresh.microphone,
    take: fresh.take,
    position: fresh.position,
    takes: Array.isArray(takes) ? takes.map((take) => takeOf(take, fresh.position.id)) : takes,
    noiseReadings: [],
  };
}

function liveOf({ outputId, microphoneId, ...rest }: Fields, fresh: object): Fields {
  return { ...fresh, ...rest, output: deviceOf(outputId), microphone: deviceOf(microphoneId) };
}

/** Its name was not kept: it can be found again by its id only. */
function deviceOf(id: unknown): unknown {
  return typeof id === 'string' ? { id, name: '' } : id;
}

function takeOf(take: unknown, positionId: string): unknown {
  if (!isRecord(take)) return take;
  const { position } = take;
  return {
    ...take,
    position: isRecord(position) ? { ...position, id: positionId } : position,
    loopbackId: null,
  };
}

type Fields = Readonly<Record<string, unknown>>;

function isRecord(value: unknown): value is Fields {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
