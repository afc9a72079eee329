import { planTake } from '../../take/plan-take';
import type { Schedule } from '../../take/schedule';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { BenchState } from '../bench';
import type { Desk } from '../desk';
import { keepCapture } from './keep-capture';

/** The take of all speakers that is saved for the recording rig, and read back from it. */
export function wholeTake({ document, layout }: BenchState): Schedule | Trouble {
  const plan = planTake(layout, { ...document.take, overlap: false }, null);
  if (isTrouble(plan)) return plan;
  const [part] = plan.parts;
  return part ? part.schedule : trouble('failed', 'This layout has no speakers to play.');
}

/** Reads a recording of the whole take, as it was brought back. */
export async function importRecording(
  desk: Desk,
  file: File,
  signal: AbortSignal,
): Promise<Trouble | null> {
  const schedule = wholeTake(desk.state);
  if (isTrouble(schedule)) return schedule;
  const bytes = new Uint8Array(await file.arrayBuffer());
  const capture = desk.parts.readRecording(bytes, schedule);
  return isTrouble(capture) ? capture : keepCapture(desk, schedule, capture, signal);
}
