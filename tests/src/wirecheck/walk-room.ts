import { renderCapture } from '../../../src/rig/practice-capture';
import { systemIn, type PracticeFaults } from '../../../src/rig/practice-system';
import type { Layout } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { layOutStop } from '../../../src/wirecheck/lay-out-stop';
import { readStop } from '../../../src/wirecheck/read-stop';
import type { WalkStop } from '../../../src/wirecheck/walk';

/** A walk past every speaker of a practice room; even seeds have no inverted speaker of their own. */
export async function walkRoom(
  layout: Layout,
  seed: number,
  faults: PracticeFaults,
): Promise<WalkStop[]> {
  const schedule = layOutStop(layout);
  const stops: WalkStop[] = [];
  for (const speaker of schedule.channels) {
    const room = { layout, seed, seat: 0, hold: speaker, faults, loopback: false };
    const samples = await renderCapture(systemIn(room), schedule, { faults });
    if (!samples) throw new Error('the practice room gave no capture');
    const read = readStop(schedule, { samples, sampleRate: 48_000, gaps: [] });
    if (isTrouble(read)) throw new Error(`${speaker}: ${read.sentence}`);
    stops.push({ speaker, sounds: read.sounds });
  }
  return stops;
}
