import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { OF_PLACE } from '../../dsp/rolloff/learnt/of-place';
import { OF_READING } from '../../dsp/rolloff/learnt/of-reading';
import { OF_ROOM } from '../../dsp/rolloff/learnt/of-room';
import { SEAT_MEAN_DB } from '../../dsp/rolloff/learnt/seat-mean';
import { renderCapture } from '../../src/rig/practice-capture';
import { practiceSystem } from '../../src/rig/practice-system';
import { layoutFromName } from '../../src/system/layout';
import type { Schedule } from '../../src/take/schedule';
import { scheduleTake, type ScheduleOptions } from '../../src/take/schedule-take';
import { isTrouble } from '../../src/trouble';

export interface SpeedTake {
  readonly schedule: Schedule;
  readonly samples: Float32Array;
}

/** A 48 kHz take of a layout in a simulated room. */
export async function makeTake(name: string, choices: ScheduleOptions = {}): Promise<SpeedTake> {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new Error(layout.sentence);
  const schedule = scheduleTake(layout, choices);
  const samples = await renderCapture(practiceSystem(layout, 3), schedule);
  if (!samples) throw new Error('the practice room gave no capture');
  return { schedule, samples };
}

/** The take that was written into a folder. */
export function loadTake(folder: string): SpeedTake {
  const schedule = JSON.parse(readFileSync(join(folder, 'take.json'), 'utf8')) as Schedule;
  const bytes = readFileSync(join(folder, 'capture.f32'));
  return { schedule, samples: new Float32Array(new Uint8Array(bytes).buffer) };
}

/** Writes a take into a folder for the other reader, with what was learnt of rooms as data. */
export function writeTake(folder: string, { schedule, samples }: SpeedTake): void {
  mkdirSync(folder, { recursive: true });
  const learnt = { ofRoom: OF_ROOM, ofPlace: OF_PLACE, ofReading: OF_READING, mean: SEAT_MEAN_DB };
  writeFileSync(join(folder, 'take.json'), JSON.stringify(schedule));
  writeFileSync(join(folder, 'learnt.json'), JSON.stringify(learnt));
  writeFileSync(join(folder, 'capture.f32'), new Uint8Array(samples.buffer));
}
