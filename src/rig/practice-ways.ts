import type { ChannelLabel } from '../system/channel';
import { channelGroup, isSub } from '../system/channel-names';
import type { ProcessorSettings } from '../system/processor-settings';
import type { PracticeFilter } from './practice-filter';
import type { PracticeProcessor } from './practice-processor';
import { slipInTyping } from './practice-slips';

/** One way through a simulated processor from a channel to an output. */
export interface PracticeWay {
  /** The output, by the speaker it is to feed. */
  readonly output: ChannelLabel;
  readonly filters: readonly PracticeFilter[];
  /** Gain of the output's equaliser at its two frequencies, dB. */
  readonly equaliserDb: number;
  readonly delaySeconds: number;
  readonly gainDb: number;
  readonly inverted: boolean;
}

/** What processors count with, m/s; common practice. */
const metresPerSecond = 343;

/**
 * The ways a channel takes to the outputs `labels`. A main plays through its high-pass, and through
 * the low-pass of the same crossover on every sub. What is swept as a sub is the LFE channel with
 * that sub alone switched on.
 */
export function practiceWays(
  { typed: wanted, slips }: PracticeProcessor,
  labels: readonly ChannelLabel[],
  channel: ChannelLabel,
): PracticeWay[] {
  const typed = slipInTyping(wanted, slips);
  const { lfe, filters } = typed;
  const lowPass = (hz: number): PracticeFilter => ({ ...filters.subLowPass, kind: 'low-pass', hz });
  const wayTo = (
    output: ChannelLabel,
    own: readonly PracticeFilter[],
    gainDb = 0,
  ): PracticeWay => ({
    output,
    filters: [...own, ...(isSub(output) ? subFilters(typed, slips, output) : [])],
    equaliserDb: equaliserOf(slips, output),
    delaySeconds: delayOf(typed, labels, output),
    gainDb: gainDb + (typed.trimDb[output] ?? 0),
    inverted: typed.inverted.includes(output),
  });
  if (isSub(channel)) return [wayTo(channel, [lowPass(lfe.lowPassHz)], lfe.gainDb)];
  const hz = typed.crossoverHz[channelGroup(channel)] ?? null;
  const ways =
    hz === null
      ? [wayTo(channel, [])]
      : [
          wayTo(channel, [{ ...filters.highPass, kind: 'high-pass', hz }]),
          ...labels.filter(isSub).map((sub) => wayTo(sub, [lowPass(hz)])),
        ];
  const mixed = slips.flatMap((slip) =>
    slip.kind === 'upmixing' && slip.to !== channel && labels.includes(slip.to)
      ? [wayTo(slip.to, [], slip.gainDb)]
      : [],
  );
  return [...ways, ...mixed];
}

/** What everything on a sub passes besides the crossover. */
function subFilters(
  { subLowPassHz, lowCutHz, filters }: ProcessorSettings,
  slips: PracticeProcessor['slips'],
  sub: ChannelLabel,
): PracticeFilter[] {
  const own = slips.flatMap((slip): PracticeFilter[] =>
    slip.kind === 'own low-pass' && slip.channels.includes(sub)
      ? [{ family: 'Butterworth', order: slip.order, kind: 'low-pass', hz: slip.hz }]
      : [],
  );
  const lowCut: PracticeFilter[] =
    lowCutHz === null ? [] : [{ family: 'Butterworth', order: 2, kind: 'high-pass', hz: lowCutHz }];
  const lowPass: PracticeFilter[] =
    subLowPassHz === null ? [] : [{ ...filters.subLowPass, kind: 'low-pass', hz: subLowPassHz }];
  return [...lowPass, ...lowCut, ...own];
}

function equaliserOf(slips: PracticeProcessor['slips'], output: ChannelLabel): number {
  const found = slips.find((slip) => slip.kind === 'equaliser' && slip.channels.includes(output));
  return found?.kind === 'equaliser' ? found.gainDb : 0;
}

/** (farthest − own)/343 m/s; without a distance none. */
function delayOf(
  { distanceMetres }: ProcessorSettings,
  labels: readonly ChannelLabel[],
  output: ChannelLabel,
): number {
  const farthest = Math.max(0, ...labels.flatMap((label) => distanceMetres[label] ?? []));
  return (farthest - (distanceMetres[output] ?? farthest)) / metresPerSecond;
}
