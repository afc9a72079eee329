import type { Point } from '../../dsp/room/point';
import type { Room } from '../../dsp/room/room';
import { seededRandom } from '../../dsp/signal/random';
import type { PracticeSpeaker } from './practice-system';

/** Where a hand holds the microphone to a speaker on a walk: so far before it. */
export const heldMetres = 0.25;
/** On a stand close to it: farther than a tuner would, as the room knows points and no cones. */
export const closeMetres = 0.12;
/** So far off its axis at most, a share of the distance. */
const asideShare = 0.4;
const fromWall = 0.04;

/** The microphone held to a speaker, inside the room; the same seed is the same hand. */
export function holdMicrophone(
  { size }: Room,
  { channel, speaker }: PracticeSpeaker,
  seed: number,
  metres = heldMetres,
): Point {
  const { position, aim } = speaker;
  const random = seededRandom(seed + 0.4375 + 31 * channel.length + channel.charCodeAt(1));
  const near = (axis: 'x' | 'y' | 'z'): number => {
    const at = position[axis] + metres * (aim[axis] + asideShare * (2 * random() - 1));
    return Math.min(size[axis] - fromWall, Math.max(fromWall, at));
  };
  return { x: near('x'), y: near('y'), z: near('z') };
}
