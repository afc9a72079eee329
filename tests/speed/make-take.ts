import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { renderCapture } from '../../src/rig/practice-capture';
import { practiceSystem } from '../../src/rig/practice-system';
import { layoutFromName } from '../../src/system/layout';
import type { Schedule } from '../../src/take/schedule';
import { scheduleTake } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';

export interface SpeedTake {
  readonly schedule: Schedule;
  readonly samples: Float32Array;
}

/** An 11-speaker 48 kHz take in a simulated room; also written to `folder` for the other reader. */
export async function makeTake(folder: string): Promise<SpeedTake> {
  const layout = layoutFromName('5.2.4');
  if (isTrouble(layout)) throw new Error(layout.sentence);
  const schedule = scheduleTake(layout);
  const samples = await renderCapture(practiceSystem(layout, 3), schedule);
  if (!samples) throw new Error('the practice room gave no capture');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'take.json'), JSON.stringify(schedule));
  writeFileSync(join(folder, 'capture.f32'), new Uint8Array(samples.buffer));
  return { schedule, samples };
}
