import { describe, expect, it } from 'vitest';
import { gaussian, seededRandom } from '../../../../dsp/signal/random';
import { inputNotes, pickInputs } from '../../../../src/rig/live/pick-inputs';

/** 0.1 s of silence, then a tone, over noise; all as wide as said. */
function input(tone: number, noise: number, seed = 1): Float32Array {
  const random = gaussian(seededRandom(seed));
  return Float32Array.from({ length: 24000 }, (_, n) => {
    return (n < 4800 ? 0 : tone * Math.sin(0.1 * n)) + noise * random();
  });
}

const room = input(0.3, 0.003);
const wire = input(0.05, 0.00001, 2);

describe('pickInputs', () => {
  it('takes the side that was said to be the microphone’s, and the other for the loopback', () => {
    const said = { microphoneInput: 1, loopback: true } as const;
    expect(pickInputs([room, wire], 4800, said)).toEqual({ microphone: 1, loopback: 0 });
  });

  it('tells a wire from a room by its clean silence, whichever is louder or first', () => {
    const unsaid = { microphoneInput: null, loopback: true };
    expect(pickInputs([room, wire], 4800, unsaid)).toEqual({ microphone: 0, loopback: 1 });
    expect(pickInputs([wire, room], 4800, unsaid)).toEqual({ microphone: 1, loopback: 0 });
    expect(pickInputs([input(0.9, 0), room], 4800, unsaid)).toMatchObject({ loopback: 0 });
  });

  it('finds the live side and no loopback where none was asked for', () => {
    const plain = { microphoneInput: null, loopback: false };
    expect(pickInputs([input(0, 0.001), room], 4800, plain)).toEqual({
      microphone: 1,
      loopback: null,
    });
  });

  it('names the sides for the record', () => {
    expect(inputNotes({ microphone: 1, loopback: 0 })).toEqual([
      'microphone on input 2',
      'loopback on input 1',
    ]);
    expect(inputNotes({ microphone: 0, loopback: null })).toEqual(['microphone on input 1']);
  });
});
