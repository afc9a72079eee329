import type { RoomSpec } from './room/room-spec';

/**
 * A living room with a 5.1 system on a 7.1 interface, sides on the last two outputs. The right
 * surround is wired the wrong way round; the sub is late by its own electronics.
 */
export const livingRoom: RoomSpec = {
  sampleRate: 48000,
  size: [5.6, 4.1, 2.5],
  microphone: [2.31, 2.13, 1.12],
  reflectance: [0.86, 0.62],
  celsius: 20,
  gainDb: -8,
  noiseDb: -72,
  skewPpm: 23,
  seed: 41,
  speakers: [
    { output: 0, position: [4.62, 3.34, 1.05], box: { kind: 'closed', resonanceHz: 62, q: 0.72 } },
    { output: 1, position: [4.58, 0.83, 1.05], box: { kind: 'closed', resonanceHz: 62, q: 0.72 } },
    { output: 2, position: [4.93, 2.08, 0.92], box: { kind: 'vented', tuningHz: 58 } },
    {
      output: 3,
      position: [5.21, 3.63, 0.21],
      box: { kind: 'closed', resonanceHz: 27, q: 0.75 },
      lowPassHz: 120,
      delaySeconds: 0.0035,
    },
    { output: 6, position: [1.71, 3.66, 1.31], box: { kind: 'closed', resonanceHz: 88, q: 0.8 } },
    {
      output: 7,
      position: [1.64, 0.52, 1.31],
      box: { kind: 'closed', resonanceHz: 88, q: 0.8 },
      inverted: true,
    },
  ],
};
