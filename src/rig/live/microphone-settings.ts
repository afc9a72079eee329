import { hzText } from '../../locale/number-text';
import { msg, str } from '@lit/localize';
import { trouble, type Trouble } from '../../trouble';

/** Voice processing that would bend the measurement, by the names of the media capture standard. */
const processing = {
  get echoCancellation() {
    return msg('echo cancelling');
  },
  get noiseSuppression() {
    return msg('noise suppression');
  },
  get autoGainControl() {
    return msg('automatic gain');
  },
  get voiceIsolation() {
    return msg('voice isolation');
  },
} as const;

/** Lowest rate of a microphone or output that still carries the sweeps, Hz. */
export const lowestRateHz = 44100;

/** What the browser told of an opened microphone, and what it would not tell. */
export interface MicrophoneFacts {
  readonly notes: readonly string[];
  readonly unknown: readonly string[];
}

/**
 * Reads back what the browser really applies to a microphone. A setting that is absent is
 * unknown, not off. Trouble when processing is still on or the rate is below ${hzText(44100)}.
 */
export function judgeMicrophone(
  label: string,
  settings: Readonly<Record<string, unknown>>,
): MicrophoneFacts | Trouble {
  const unknown: string[] = [];
  for (const [setting, name] of Object.entries(processing)) {
    const value = settings[setting];
    if (value === undefined) {
      if (setting !== 'voiceIsolation') unknown.push(msg(str`${name} of the microphone`));
    } else if (value !== false && value !== 'none') {
      return trouble(
        'processing-on',
        msg(
          str`The browser keeps ${name} on for the microphone “${label}”, which would bend every reading. Turn it off in the browser's or the system's sound settings, or use another browser.`,
        ),
      );
    }
  }
  const rate = settings['sampleRate'];
  const notes = [msg(str`microphone: ${label}`)];
  if (typeof rate !== 'number') unknown.push(msg('rate of the microphone'));
  else {
    if (rate < lowestRateHz) {
      return trouble(
        'wrong-rate',
        msg(
          str`The microphone “${label}” runs at ${hzText(rate)} and needs at least ${hzText(44100)}. Wireless headsets do this: use a microphone with a cable, or set its rate in the system's sound settings.`,
        ),
      );
    }
    notes.push(msg(str`microphone rate: ${rate} Hz`));
  }
  const depth = settings['sampleSize'];
  if (typeof depth === 'number') notes.push(msg(str`microphone depth: ${depth} bits`));
  return { notes, unknown };
}
