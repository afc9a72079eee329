import type { MicrophoneSetup } from '../../../src/microphone/calibration';
import type { Bench } from '../../../src/session/bench';

/** Changes what is known of the microphone, under a name that undo can show. */
export function changeMicrophone(
  bench: Bench | null,
  name: string,
  microphone: Partial<MicrophoneSetup>,
): void {
  bench?.change(name, (document) => ({
    ...document,
    microphone: { ...document.microphone, ...microphone },
  }));
}
