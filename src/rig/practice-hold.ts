import type { Point } from '../../dsp/room/point';
import type { Room } from '../../dsp/room/room';
import { seededRandom } from '../../dsp/signal/random';
import type { PracticeSpeaker } from './practice-system';

/** Where a hand holds the microphone to a speaker: so far before it, and so far off its axis at most. */
const beforeMetres = 0.25;
const asideMetres = 0.1;
const fromWall = 0.04;

/** The microphone held to a speaker, inside the room; the same seed is the same hand. */
export function holdMicrophone(
  { size }: Room,
  { channel, speaker }: PracticeSpeaker,
  seed: number,
): Point {
  const { position, aim } = speaker;
  const random = seededRandom(seed + 0.4375 + 31 * channel.length + channel.charCodeAt(1));
  const near = (axis: 'x' | 'y' | 'z'): number => {
    const at = position[axis] + beforeMetres * aim[axis] + asideMetres * (2 * random() - 1);
    return Math.min(size[axis] - fromWall, Math.max(fromWall, at));
  };
  return { x: near('x'), y: near('y'), z: near('z') };
}
