import { trouble } from '../../trouble';
import type { Output } from './open-output';
import type { TakeEnding } from './take-ending';

const lookSeconds = 1;
/** An audio clock that stands still for this long has lost its device. */
const stallSeconds = 5;
/** A page that was held up itself gets this long to hear what waited. */
const graceSeconds = 1;

/** Ends the take when the output fails, stops, or changes its number of channels. */
export function watchOutput(ending: TakeEnding, { context, native }: Output): void {
  const gone = (): void => {
    const sentence =
      'The audio output stopped. Check that it is switched on and connected, then start again.';
    ending.end(trouble('device-gone', sentence));
  };
  ending.atEnd(native.onFailure(gone));
  context.onstatechange = () => {
    if (context.state !== 'running') gone();
  };
  ending.atEnd(() => (context.onstatechange = null));
  const { destination } = context;
  const channelsBefore = destination.maxChannelCount;
  const look = setInterval(() => {
    if (destination.maxChannelCount === channelsBefore) return;
    const sentence = `The audio output changed from ${channelsBefore} to ${destination.maxChannelCount} channels. Set it back in the system's sound settings, then start again.`;
    ending.end(trouble('no-output', sentence));
  }, lookSeconds * 1000);
  ending.atEnd(() => clearInterval(look));
}

/**
 * Ends the take when nothing was heard of the audio clock for too long; returns what to call with
 * every sign of life.
 */
export function watchStall(ending: TakeEnding): () => void {
  const stalled = (): void => {
    const sentence =
      'The audio clock of this computer stands still, so nothing plays. Check that the output is connected, close other programs that use it, then start again.';
    ending.end(trouble('no-output', sentence));
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => {
      // Messages may have waited behind a busy page; they are heard before this fires.
      timer = setTimeout(stalled, graceSeconds * 1000);
    }, stallSeconds * 1000);
  };
  wait();
  ending.atEnd(() => clearTimeout(timer));
  return () => {
    if (ending.reason === null) wait();
  };
}
