import { msg } from '@lit/localize';
import { firstProvingAttempt, planTake } from '../../take/plan-take';
import type { Schedule } from '../../take/schedule';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { BenchState } from '../bench';
import type { Desk } from '../desk';
import type { Proving, TakePurpose } from '../document';
import { keepCapture } from './keep-capture';

/** The take of all speakers that is saved for the recording rig, and read back from it. */
export function wholeTake(
  { document, layout }: BenchState,
  purpose: TakePurpose = 'probe',
): Schedule | Trouble {
  const options = purpose === 'prove' ? { attempt: firstProvingAttempt, throughLfe: true } : {};
  const plan = planTake(layout, { ...document.take, overlap: false }, null, options);
  if (isTrouble(plan)) return plan;
  const [part] = plan.parts;
  return part ? part.schedule : trouble('failed', msg('This layout has no speakers to play.'));
}

/** Reads a recording of the whole take, as it was brought back; `proving` is what it is to prove. */
export async function importRecording(
  desk: Desk,
  file: File,
  signal: AbortSignal,
  proving: Proving | null = null,
): Promise<Trouble | null> {
  const schedule = wholeTake(desk.state, proving ? 'prove' : 'probe');
  if (isTrouble(schedule)) return schedule;
  const bytes = new Uint8Array(await file.arrayBuffer());
  const capture = await desk.parts.readRecording(bytes, schedule);
  return isTrouble(capture) ? capture : keepCapture(desk, schedule, capture, signal, proving);
}
