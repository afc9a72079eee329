import type { CapturedBlock } from '../port';
import type { CaptureChunk } from './capture-message';
import { pickInputs, type PickedInputs } from './pick-inputs';
import type { TakeDevices } from './take-devices';

/** So much is heard before the microphone's side is told, when it is not known, seconds. */
const listenSeconds = 0.25;

/**
 * Turns chunks into blocks of the microphone (and the loopback), counted from the first frame. While
 * the microphone's side is not known, blocks wait until it is; then none waits or is kept.
 */
export function createLineBlocks(
  sampleRate: number,
  devices: Pick<TakeDevices, 'microphoneInput' | 'loopback'>,
  onBlock: (block: CapturedBlock) => void,
): (chunk: CaptureChunk) => void {
  let first: number | null = null;
  let picked: PickedInputs | null = null;
  let waiting: CaptureChunk[] = [];
  const send = ({ frame, channels }: CaptureChunk, inputs: PickedInputs): void => {
    const samples = channels[inputs.microphone];
    if (!samples) return;
    const loopback = inputs.loopback === null ? null : (channels[inputs.loopback] ?? null);
    onBlock({ frame: frame - (first ?? frame), samples, loopback });
  };
  return (chunk) => {
    first ??= chunk.frame;
    if (picked) return send(chunk, picked);
    waiting.push(chunk);
    const known = devices.microphoneInput !== null || devices.loopback;
    if (!known && chunk.frame - first < listenSeconds * sampleRate) return;
    picked = pickInputs(known ? chunk.channels : joined(waiting), 0, {
      ...devices,
      // A line has no silence to tell a wire from a room by.
      microphoneInput: devices.microphoneInput ?? (devices.loopback ? 0 : null),
    });
    const inputs = picked;
    for (const each of waiting) send(each, inputs);
    waiting = [];
  };
}

/** All that was heard, channel by channel. */
function joined(chunks: readonly CaptureChunk[]): Float32Array[] {
  const count = Math.max(...chunks.map(({ channels }) => channels.length));
  return Array.from({ length: count }, (_, channel) =>
    Float32Array.from(chunks.flatMap(({ channels }) => [...(channels[channel] ?? [])])),
  );
}
