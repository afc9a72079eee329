import { bassGrid, type Transfer } from '../../dsp/bass/transfer';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import { median } from '../../dsp/signal/median';
import type { ProcessorSteps } from '../proposal/proposal';
import { heardBass } from '../reading/heard-bass';
import type { ChannelReading, Readings } from '../reading/reading';
import type { Channel, ChannelLabel, Layout } from '../system/channel';
import type { ProcessorSettings } from '../system/processor-settings';
import { arrivalOf } from './arrival-of';

/** What a proof is judged by. */
export interface ProofInput {
  readonly layout: Layout;
  /** What was to be typed. */
  readonly typed: ProcessorSettings;
  readonly steps: ProcessorSteps;
  /** The system as it was read without these settings; null where it was not. */
  readonly before: Readings | null;
  /** The same microphone position through the processor, nothing taken out. */
  readonly after: Readings;
}

/** A channel with its readings before and after, and its bass. */
export interface ProvedChannel {
  readonly channel: Channel;
  readonly before: ChannelReading | null;
  readonly after: ChannelReading | null;
  readonly bassBefore: Transfer | null;
  readonly bassAfter: Transfer | null;
}

/** All that the claims are judged on. */
export interface ProofCase extends ProofInput {
  readonly hz: Float64Array;
  readonly metresPerSecond: number;
  /** In the order of the layout. */
  readonly mains: readonly ProvedChannel[];
  readonly subs: readonly ProvedChannel[];
  /** How much louder everything is than before beside its trims, dB: a master volume. */
  readonly volumeDb: number;
  /** How much later the reference speaker comes than its settings say, beside the others, seconds. */
  readonly referenceLateSeconds: number;
}

/** Pairs the readings before and after of every channel that was played to prove it. */
export function proofCase(input: ProofInput): ProofCase {
  const { layout, before, after, typed } = input;
  const find = (readings: Readings | null, label: ChannelLabel): ChannelReading | null =>
    readings?.channels.find(({ channel }) => channel === label) ?? null;
  const channels = layout.channels.flatMap((channel): ProvedChannel[] => {
    const [was, is] = [find(before, channel.label), find(after, channel.label)];
    if (!is) return [];
    return [
      { channel, before: was, after: is, bassBefore: heardBass(was), bassAfter: heardBass(is) },
    ];
  });
  const mains = channels.filter(({ channel }) => channel.kind !== 'sub');
  const louder = mains.flatMap(({ channel, before: was, after: is }) =>
    typeof was?.levelDb === 'number' && typeof is?.levelDb === 'number'
      ? [is.levelDb - was.levelDb - (typed.trimDb[channel.label] ?? 0)]
      : [],
  );
  const metresPerSecond = speedOfSound(after.temperatureCelsius);
  const late = -lateness(mains, input, metresPerSecond);
  return {
    ...input,
    hz: bassGrid(),
    metresPerSecond,
    mains,
    subs: channels.filter(({ channel }) => channel.kind === 'sub'),
    volumeDb: louder.length === 0 ? 0 : median(louder),
    referenceLateSeconds: Math.abs(late) > leastLateSeconds ? late : 0,
  };
}

/** Less is no mistake. */
const leastLateSeconds = 0.1e-3;

/** How much later than expected the mains come beside the reference, in the middle, seconds. */
function lateness(
  mains: readonly ProvedChannel[],
  input: ProofInput,
  metresPerSecond: number,
): number {
  const all = mains.flatMap((main) => arrivalOf(main, input, metresPerSecond)?.late ?? []);
  // Of two nobody can say which one is wrong.
  return all.length < 3 ? 0 : median(all);
}
