/** What can be done to the microphone's signal while it runs. */
export type RoomFault =
  | { readonly kind: 'drop'; readonly frames: number }
  | { readonly kind: 'repeat'; readonly frames: number }
  | { readonly kind: 'noise-burst'; readonly frames: number; readonly rmsDb: number }
  | { readonly kind: 'gain'; readonly gainDb: number }
  | { readonly kind: 'clip'; readonly levelDb: number }
  | { readonly kind: 'none' };

/** Applies faults to the stream of microphone samples; `inject` takes effect on the next block. */
export interface FaultLine {
  inject(fault: RoomFault): void;
  apply(block: Float64Array, gaussian: () => number): Float64Array;
}

/** A line without faults. 'gain' and 'clip' last until 'none'; the others happen once. */
export function createFaultLine(): FaultLine {
  let dropLeft = 0;
  let repeatFrames = 0;
  let burst = { left: 0, rms: 0 };
  let gain = 1;
  let ceiling = 1;
  return {
    inject(fault) {
      if (fault.kind === 'drop') dropLeft += fault.frames;
      if (fault.kind === 'repeat') repeatFrames += fault.frames;
      if (fault.kind === 'noise-burst') {
        burst = { left: fault.frames, rms: 10 ** (fault.rmsDb / 20) };
      }
      if (fault.kind === 'gain') gain = 10 ** (fault.gainDb / 20);
      if (fault.kind === 'clip') ceiling = 10 ** (fault.levelDb / 20);
      if (fault.kind === 'none') {
        gain = 1;
        ceiling = 1;
        burst = { left: 0, rms: 0 };
      }
    },
    apply(block, gaussian) {
      let samples = block;
      if (dropLeft > 0) {
        const dropped = Math.min(dropLeft, samples.length);
        dropLeft -= dropped;
        samples = samples.slice(dropped);
      }
      if (repeatFrames > 0 && samples.length > 0) {
        const again = samples.slice(-Math.min(repeatFrames, samples.length));
        repeatFrames -= again.length;
        const longer = new Float64Array(samples.length + again.length);
        longer.set(samples);
        longer.set(again, samples.length);
        samples = longer;
      }
      return samples.map((value) => {
        let heard = value * gain;
        if (burst.left > 0) {
          burst.left--;
          heard += burst.rms * gaussian();
        }
        return Math.max(-ceiling, Math.min(ceiling, heard));
      });
    },
  };
}
