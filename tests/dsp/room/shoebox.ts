import { bandHz } from '../../../dsp/room/bands';
import { placeSpeaker } from '../../../dsp/room/draw-speaker';
import type { Point } from '../../../dsp/room/point';
import type { Room } from '../../../dsp/room/room';
import type { Speaker, SpeakerModel } from '../../../dsp/room/speaker';

/** A room at 20 °C whose six walls absorb as given, alike in all bands. */
export function shoebox(size: Point, walls: readonly number[], seed = 1): Room {
  const absorption = walls.map((alpha) => bandHz.map(() => alpha));
  return { size, celsius: 20, absorption, seed };
}

/** A speaker as flat as can be: Butterworth at 1 Hz, no beam, no ripple, level 1 at 1 m. */
export const flatModel: SpeakerModel = {
  box: { kind: 'sealed', resonanceHz: 1, q: Math.SQRT1_2 },
  protectionHz: null,
  upper: { hz: 1e6, order: 2 },
  bumps: [],
  tiltDbPerOctave: 0,
  crossoverHz: null,
  directivity: { cornerHz: 1e9, floorDb: 0 },
  gainDb: 0,
  inverted: false,
  delaySeconds: 0,
};

/** The flat speaker at a place. */
export function flatSpeaker(position: Point): Speaker {
  return placeSpeaker(flatModel, position, { ...position, y: position.y + 1 });
}
