import { msg } from '@lit/localize';
import { trouble, type Trouble } from '../../trouble';
import type { TakeEnding } from './take-ending';

/** An audio clock that stands still for this long has lost its device. */
const stallSeconds = 5;
/** A browser whose audio server died may never answer; a slow device does within this. */
const answerSeconds = 10;
/** A page that was held up itself gets this long to hear what waited. */
const graceSeconds = 1;

/** A watch over something that must be heard of again and again. */
export interface Watch {
  /** A sign of life; starts the watch anew. */
  alive(): void;
  stop(): void;
}

/** Ends the take when the audio clock stands still. */
export function watchClock(ending: TakeEnding): Watch {
  return watchSilence(ending, stallSeconds, () =>
    trouble(
      'no-output',
      msg(
        'The audio clock of this computer stands still, so nothing plays. Check that the output is connected, close other programs that use it, then start again.',
      ),
    ),
  );
}

/** Ends the take when the browser does not answer while devices are opened. */
export function watchAnswers(ending: TakeEnding): Watch {
  return watchSilence(ending, answerSeconds, () =>
    trouble(
      'failed',
      msg(
        'The browser does not answer when its audio devices are asked for; it may have lost the system’s audio. Close the browser, open it again, then start again.',
      ),
    ),
  );
}

function watchSilence(ending: TakeEnding, seconds: number, reason: () => Trouble): Watch {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = (): void => clearTimeout(timer);
  const alive = (): void => {
    stop();
    if (ending.over) return;
    timer = setTimeout(() => {
      // Messages may have waited behind a busy page; they are heard before this fires.
      timer = setTimeout(() => ending.end(reason()), graceSeconds * 1000);
    }, seconds * 1000);
  };
  alive();
  ending.atEnd(stop);
  return { alive, stop };
}
