import type { ChannelReading, Readings } from '../../src/reading/reading';
import type { Activity, BenchState } from '../../src/session/bench';
import type { Lane, LaneStage } from '../charts/lane';
import { groupColour } from '../group-colour';

/** Readings that belong to the plan as it stands; null when there are none. */
export function currentReadings(state: BenchState): Readings | null {
  return state.readings?.layout === state.layout.name ? state.readings : null;
}

/** One lane a speaker: what it waits for while a take runs, its reading once that is there. */
export function lanesOf(state: BenchState): Lane[] {
  const { activity, layout } = state;
  const readings = activity.kind === 'idle' ? (currentReadings(state)?.channels ?? null) : null;
  const arrived = activity.kind === 'reading' ? activity.channels : [];
  const found = new Map<string, ChannelReading>(
    (readings ?? arrived).map((reading) => [reading.channel, reading]),
  );
  const nextToRead = layout.channels.findIndex(({ label }) => !found.has(label));
  return layout.channels.map(({ label, name, group }, index) => {
    const reading = found.get(label) ?? null;
    const stage = reading
      ? 'read'
      : stageOf(activity, index, index === nextToRead, soundingIndex(state));
    return { channel: label, name, colour: groupColour(group), stage, reading };
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
      return 'idle';
    case 'reading':
      return isNext ? 'reading' : 'heard';
    case 'playing':
      if (index === sounding) return 'sweeping';
      return index < sounding ? 'heard' : 'waiting';
  }
}
