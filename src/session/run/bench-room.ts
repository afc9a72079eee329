import type { Rig } from '../../rig/port';
import type { ChannelLabel } from '../../system/channel';
import type { ProcessorSettings } from '../../system/processor-settings';
import { isTrouble, type Trouble } from '../../trouble';
import type { Desk } from '../desk';
import type { MeterDesk } from './meter-desk';
import type { PlugBoard } from './plug-board';
import type { ProofJudge } from './proof-judge';
import type { PromptGate } from './prompt-gate';
import { otherMicrophone } from './sound-level-here';

/** What everything that sounds or listens works with. */
export interface BenchRoom {
  readonly desk: Desk;
  readonly gate: PromptGate;
  readonly board: PlugBoard;
  readonly meter: MeterDesk;
  readonly judge: ProofJudge;
}

/**
 * Works with the chosen rig while its levels are shown. Says, without stopping, when the sound
 * level was calibrated with another microphone. `hold` is the speaker that a simulated microphone
 * is held to, `proving` what a simulated processor was to be set to.
 */
export async function withRig(
  { desk, meter }: BenchRoom,
  work: (rig: Rig) => Promise<Trouble | null>,
  hold: ChannelLabel | null = null,
  proving: ProcessorSettings | null = null,
): Promise<Trouble | null> {
  const { document, layout } = desk.state;
  const made = await desk.parts.makeRig(document, layout, hold, proving);
  if (isTrouble(made)) return made;
  const otherwise = made.kind === 'live' ? otherMicrophone(document) : null;
  if (otherwise) desk.raise(otherwise);
  const rig = meter.over(made);
  const quiet = meter.watch(rig);
  try {
    return await work(rig);
  } finally {
    quiet();
  }
}
