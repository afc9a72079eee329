import { msg } from '@lit/localize';

/** What runs: as a sentence about it begins, and as undo calls its changes. */
export interface RunName {
  readonly what: string;
  /** Null adds the changes to what came before. */
  readonly step: string | null;
}

/** Names of all that the bench runs, in the language in force. */
export const runNames = {
  take: () => ({ what: msg('The take'), step: msg('Take') }),
  repeat: () => ({ what: msg('The repeat'), step: msg('Repeat') }),
  proof: () => ({ what: msg('The proof'), step: msg('Proof') }),
  noise: () => ({ what: msg('The noise'), step: msg('Noise') }),
  listening: () => ({ what: msg('Listening'), step: msg('Listening') }),
  climb: () => ({ what: msg('The climb'), step: msg('Climb') }),
  soundLevel: () => ({ what: msg('The calibration'), step: msg('Calibration') }),
  walkStop: () => ({ what: msg('The walk stop'), step: msg('Walk stop') }),
  calibrationFile: () => ({
    what: msg('Reading the calibration file'),
    step: msg('Choose calibration file'),
  }),
  recording: () => ({ what: msg('The recording'), step: msg('Recording') }),
  storedTake: () => ({ what: msg('Reading the stored take'), step: null }),
  takesAgain: () => ({ what: msg('Reading the takes again'), step: null }),
  wordsAgain: () => ({ what: msg('Writing the readings again'), step: null }),
} satisfies Readonly<Record<string, () => RunName>>;
