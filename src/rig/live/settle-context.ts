import type { Output } from './open-output';
import type { TakeEnding } from './take-ending';

/** Chromium fills its capture buffer while the context rests this long. */
const restSeconds = 0.1;
export const settleSeconds = 3;

/** Runs the context as Chromium needs it: a rest after connecting, then a while to settle. */
export async function settleContext({ context }: Output, ending: TakeEnding): Promise<void> {
  await ending.until(context.resume());
  await ending.until(context.suspend());
  await ending.sleep(restSeconds);
  await ending.until(context.resume());
  await ending.sleep(settleSeconds);
}
