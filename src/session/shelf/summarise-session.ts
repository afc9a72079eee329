import * as v from 'valibot';
import { finite } from '../../schema/schema-parts';
import { layoutFromName } from '../../system/layout';
import { isTrouble } from '../../trouble';
import type { SessionDocument, TakeRecord } from '../document';

/** How far a session has come. */
export type SessionProgress = 'new' | 'planned' | 'wired' | 'probed';

/** What a list says of a session without reading all of it. */
export interface SessionSummary {
  readonly name: string;
  readonly layout: string;
  readonly createdAt: string;
  /** When it was saved last, by the clock of that moment. */
  readonly changedAt: string;
  readonly progress: SessionProgress;
  readonly takes: number;
  /** About how much its recordings take, bytes. Those it shares with a copy are counted in both. */
  readonly soundBytes: number;
}

/** A summary as it is stored. */
export const summarySchema = v.object({
  name: v.string(),
  layout: v.string(),
  createdAt: v.string(),
  changedAt: v.string(),
  progress: v.picklist(['new', 'planned', 'wired', 'probed']),
  takes: finite,
  soundBytes: finite,
}) satisfies v.GenericSchema<unknown, SessionSummary>;

/** The summary of a session that is saved at `changedAt`. */
export function summariseSession(document: SessionDocument, changedAt: string): SessionSummary {
  const { name, layout, createdAt, takes } = document;
  return {
    name,
    layout,
    createdAt,
    changedAt,
    progress: progressOf(document),
    takes: takes.length,
    soundBytes: takes.reduce((sum, take) => sum + soundBytesOf(take), 0),
  };
}

/**
 * How far a session has come: probed when a take of its layout is read; wired when each channel was
 * heard from its speaker or its speaker walked to; planned when places, room or processor are declared.
 */
export function progressOf(document: SessionDocument): SessionProgress {
  const { takes, layout: name, earAnswers, walk, system, sheet } = document;
  if (takes.some(({ readings, schedule }) => readings && schedule.layout === name)) return 'probed';
  const layout = layoutFromName(name);
  const walked = new Set(walk.map(({ speaker }) => speaker));
  const isWired =
    !isTrouble(layout) &&
    layout.channels.every(({ label }) => earAnswers[label]?.kind === 'here' || walked.has(label));
  if (isWired) return 'wired';
  const isDeclared =
    Object.keys(system.places).length > 0 || system.room !== null || sheet !== null;
  return isDeclared ? 'planned' : 'new';
}

/** As long as the schedule, in 32-bit samples; what is recorded before and after it is left out. */
function soundBytesOf({ schedule, captureRate, loopbackId }: TakeRecord): number {
  const samples = (schedule.lengthSamples * captureRate) / schedule.sampleRate;
  return Math.round(4 * samples * (loopbackId === null ? 1 : 2));
}
