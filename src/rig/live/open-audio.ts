import { msg, str } from '@lit/localize';
import { breathe } from '../../breathe';
import { isTrouble, trouble, type Trouble } from '../../trouble';
import type { CaptureMessage } from './capture-message';
import { connectCapture } from './connect-capture';
import { findAgain, listDevices, type AudioDevice } from './list-devices';
import { openMicrophone, type Microphone } from './open-microphone';
import { openOutput, type Output } from './open-output';
import { settleContext } from './settle-context';
import type { NamedDevice, TakeDevices } from './take-devices';
import type { TakeEnding } from './take-ending';
import { holdWakeLock } from './wake-lock';
import { watchDevices } from './watch-devices';
import { watchAnswers, watchClock } from './watch-answers';
import { watchOutput } from './watch-output';
import { microphonePermission } from './microphone-permission';

/** A microphone and an output on one clock, settled and watched, and what was made ready to sound. */
export interface OpenAudio<Ready> {
  readonly microphone: Microphone;
  readonly output: Output;
  readonly ready: Ready;
}

/**
 * Opens microphone and output for a take or a line, joins them and lets them settle; all of it is
 * let go when `ending` is over. `prepare` connects what is to sound before anything runs. Null
 * when it ended meanwhile; `ending` knows why.
 */
export async function openAudio<Ready>(
  devices: TakeDevices,
  ending: TakeEnding,
  prepare: (output: Output) => Ready | Trouble,
  listen: (message: CaptureMessage) => void,
): Promise<OpenAudio<Ready> | Trouble | null> {
  const answers = watchAnswers(ending);
  const ids = await ending.until(idsNow(devices));
  if (ids === null) return null;
  // A person who is asked for the microphone may take long to answer.
  if (await ending.until(asksPerson())) answers.stop();
  const microphone = await ending.hold(openMicrophone(ids.microphone), (held) => held.close());
  if (microphone === null || isTrouble(microphone)) return microphone;
  answers.alive();
  const lacking = devices.loopback ? secondInputLacking(microphone) : null;
  if (lacking) return lacking;
  const output = await ending.hold(openOutput(ids.output), (opened) => opened.close());
  if (output === null || isTrouble(output)) return output;
  // The first context and the first nodes cost their library many milliseconds: a task each.
  await ending.until(breathe());
  if (ending.reason) return null;
  const ready = prepare(output);
  if (isTrouble(ready)) return ready;
  await ending.until(breathe());
  if (ending.reason) return null;
  answers.stop();
  const clock = watchClock(ending);
  const line = await ending.hold(
    connectCapture(output, microphone, (message) => {
      clock.alive();
      listen(message);
    }),
    (opened) => opened.close(),
  );
  if (line === null || isTrouble(line)) return line;
  void holdWakeLock(ending);
  await ending.until(watchDevices(ending, microphone.track));
  await settleContext(output, ending);
  if (ending.reason) return null;
  watchOutput(ending, output);
  return { microphone, output, ready };
}

/** A browser that does not tell may ask. */
async function asksPerson(): Promise<boolean> {
  return (await microphonePermission())?.state !== 'granted';
}

function secondInputLacking({ label, track }: Microphone): Trouble | null {
  if (track.getSettings().channelCount !== 1) return null;
  return trouble(
    'wrong-channels',
    msg(
      str`The microphone “${label}” gives one channel, so there is no second input for the loopback. Choose an input with two channels, or switch the loopback off.`,
    ),
  );
}

/** The ids that the chosen devices have today. A chosen device that is not there keeps its own. */
async function idsNow({ microphone, output }: TakeDevices) {
  const { microphones, outputs } = await listDevices();
  const now = (chosen: NamedDevice | null, list: readonly AudioDevice[]): string | null =>
    chosen && (findAgain(chosen, list)?.id ?? chosen.id);
  return { microphone: now(microphone, microphones), output: now(output, outputs) };
}
