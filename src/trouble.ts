/** What the world can do to a session; every kind is something the caller must handle. */
export type TroubleKind =
  | 'bad-layout'
  | 'bad-steps'
  | 'bad-number'
  | 'bad-option'
  | 'bad-file'
  | 'bad-wav'
  | 'wrong-rate'
  | 'wrong-channels'
  | 'too-short'
  | 'silence'
  | 'other-take'
  | 'not-a-number'
  | 'no-microphone'
  | 'no-permission'
  | 'no-output'
  | 'device-gone'
  | 'processing-on'
  | 'rate-changed'
  | 'not-linear'
  | 'too-quiet'
  | 'too-loud'
  | 'bad-calibration'
  | 'hidden'
  | 'stopped'
  | 'storage'
  | 'failed';

/** A failure as a value. `sentence` is what a person reads: what is wrong, where, what to do. */
export interface Trouble {
  readonly trouble: TroubleKind;
  readonly sentence: string;
}

/** Makes a Trouble. */
export function trouble(kind: TroubleKind, sentence: string): Trouble {
  return { trouble: kind, sentence };
}

/** Tells a Trouble from any other value. */
export function isTrouble(value: unknown): value is Trouble {
  return typeof value === 'object' && value !== null && 'trouble' in value && 'sentence' in value;
}
