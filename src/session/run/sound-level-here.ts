import { msg, str } from '@lit/localize';
import type { SoundLevelCalibration } from '../../microphone/calibration';
import { trouble, type Trouble } from '../../trouble';
import type { SessionDocument } from '../document';

/** What the microphone in use is called, here and in its calibration. */
export function microphoneName({ rig, live }: SessionDocument): string {
  if (rig === 'practice') return msg('practice room, simulated');
  return live.microphone?.name || 'the system’s own choice';
}

/** The sound level calibration, when it was made with the microphone in use; else null. */
export function soundLevelHere(document: SessionDocument): SoundLevelCalibration | null {
  const { soundLevel } = document.microphone;
  return soundLevel?.microphone === microphoneName(document) ? soundLevel : null;
}

/** Says that the sound level was calibrated with another microphone; null when it was not. */
export function otherMicrophone(document: SessionDocument): Trouble | null {
  const { soundLevel } = document.microphone;
  if (soundLevel === null || soundLevelHere(document)) return null;
  return trouble(
    'bad-calibration',
    msg(
      str`The sound level was calibrated with another microphone (${soundLevel.microphone}; now: ${microphoneName(document)}). Levels are shown re full scale until it is calibrated again.`,
    ),
  );
}
