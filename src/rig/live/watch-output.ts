import { msg, str } from '@lit/localize';
import { trouble } from '../../trouble';
import type { Output } from './open-output';
import type { TakeEnding } from './take-ending';

const lookSeconds = 1;

/** Ends the take when the output fails, stops, or changes its number of channels. */
export function watchOutput(ending: TakeEnding, { context, native }: Output): void {
  const gone = (): void => {
    const sentence = msg(
      'The audio output stopped. Check that it is switched on and connected, then start again.',
    );
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
    const sentence = msg(
      str`The audio output changed from ${channelsBefore} to ${destination.maxChannelCount} channels. Set it back in the system's sound settings, then start again.`,
    );
    ending.end(trouble('no-output', sentence));
  }, lookSeconds * 1000);
  ending.atEnd(() => clearInterval(look));
}
