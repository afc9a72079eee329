import type { ChannelReading, Readings } from '../../../src/reading/reading';
import type { Activity, BenchState } from '../../../src/session/bench';
import type { Lane, LaneStage } from '../../charts/lane';
import { groupColour } from '../../group-colour';

/** Readings that belong to the plan as it stands; null when there are none. */
export function currentReadings(state: BenchState): Readings | null {
  return state.readings?.layout === state.layout.name ? state.readings : null;
}

/** One lane a speaker: what it waits for while a take runs, its reading once that is there. */
export function lanesOf(state: BenchState): Lane[] {
  const { activity, layout } = state;
  const arrived = activity.kind === 'reading' ? activity.channels : [];
  // What was read at this position before stays in sight, faint, until it is replaced.
  const found = new Map<string, ChannelReading>(
    [...(currentReadings(state)?.channels ?? []), ...arrived].map((reading) => [
      reading.channel,
      reading,
    ]),
  );
  const nextToRead = layout.channels.findIndex(({ label }) => !found.has(label));
  const sounding = soundingIndex(state);
  const running = activity.kind === 'playing' || activity.kind === 'reading';
  return layout.channels.map(({ label, name, group }, index) => {
    const reading = found.get(label) ?? null;
    const sweeping = activity.kind === 'playing' && index === sounding;
    const stage =
      reading && !sweeping ? 'read' : stageOf(activity, index, index === nextToRead, sounding);
    const earlier = stage === 'read' && running && !arrived.some((one) => one.channel === label);
    return { channel: label, name, colour: groupColour(group), stage, reading, earlier };
  });
}

function soundingIndex({ activity, layout }: BenchState): number {
  if (activity.kind !== 'playing') return -1;
  if (activity.play.phase === 'finishing') return layout.channels.length;
  return layout.channels.findIndex(({ label }) => label === activity.channel);
}

function stageOf(
  activity: Activity,
  index: number,
  isNext: boolean,
  sounding: number,
): Exclude<LaneStage, 'read'> {
  switch (activity.kind) {
    case 'idle':
    case 'walking':
    case 'noise':
    case 'climbing':
      return 'idle';
    case 'waiting':
      return 'waiting';
    case 'reading':
      return isNext ? 'reading' : 'heard';
    case 'playing':
      if (index === sounding) return 'sweeping';
      return index < sounding && activity.part.number === 1 ? 'heard' : 'waiting';
  }
}

/** What the lanes depend on: equal keys draw equal lanes. */
export function lanesKey(state: BenchState): readonly unknown[] {
  const { activity, layout, readings } = state;
  switch (activity.kind) {
    case 'playing':
      return [layout, readings, activity.play.phase, activity.channel, activity.part.number];
    case 'reading':
      return [layout, readings, 'reading', activity.channels];
    case 'waiting':
      return [layout, readings, 'waiting', null];
    case 'idle':
    case 'walking':
    case 'noise':
    case 'climbing':
      return [layout, readings, 'idle', null];
  }
}
