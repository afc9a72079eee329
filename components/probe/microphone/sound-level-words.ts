import { msg, str } from '@lit/localize';
import type { SoundLevelCalibration } from '../../../src/microphone/calibration';
import type { BenchState } from '../../../src/session/bench';
import { dateText } from '../../../src/locale/date-text';
import { numberText, thinSpace } from '../../../src/locale/number-text';

/** How and when the sound level was calibrated, and what came out. */
export function calibrationSentence({ how, at, microphone, offsetDb }: SoundLevelCalibration) {
  const means = how === 'calibrator' ? msg('a calibrator') : msg('a sound level meter');
  return msg(
    str`Calibrated with ${means} on ${dateText(at)}, with ${
      microphone || msg('a microphone without a name')
    }: full scale is ${numberText(offsetDb, 1)}${thinSpace}dB sound pressure level.`,
  );
}

/** Name of the microphone in use: the chosen one, else the one the newest live take noted. */
export function microphoneInUse({ document }: BenchState): string | null {
  const chosen = document.live.microphone?.name;
  if (chosen) return chosen;
  const notes = document.takes.findLast(({ rig }) => rig === 'live')?.notes ?? [];
  const note = notes.find((one) => /^microphone: /i.test(one));
  return note?.replace(/^microphone: /i, '') ?? null;
}

/** Says that the calibration was made with another microphone; null when it was not. */
export function otherMicrophone(state: BenchState): string | null {
  const { soundLevel } = state.document.microphone;
  const now = microphoneInUse(state);
  if (!soundLevel || state.document.rig !== 'live' || now === null) return null;
  if (soundLevel.microphone === '' || soundLevel.microphone === now) return null;
  return msg(
    str`The sound level was calibrated with ${soundLevel.microphone}, and ${now} is chosen now. Calibrate again before you trust a sound level.`,
  );
}
