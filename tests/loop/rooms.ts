import type { ClosedBox, RoomSpec } from './room/room-spec';

const front: ClosedBox = { kind: 'closed', resonanceHz: 128, q: 0.8 };
const side: ClosedBox = { kind: 'closed', resonanceHz: 140, q: 0.8 };

/**
 * A living room with a 5.1 system of small speakers on a 7.1 interface, sides on the last two
 * outputs. The right surround is wired the wrong way round; the sub is late by its own
 * electronics; the microphone's clock runs fast.
 */
export const satelliteRoom: RoomSpec = {
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
    { output: 0, position: [4.86, 3.62, 1.02], box: front },
    { output: 1, position: [4.83, 0.51, 1.02], box: front },
    { output: 2, position: [4.93, 2.08, 0.92], box: { kind: 'vented', tuningHz: 104 } },
    {
      output: 3,
      position: [5.21, 3.63, 0.21],
      box: { kind: 'closed', resonanceHz: 27, q: 0.75 },
      lowPassHz: 120,
      delaySeconds: 0.0035,
    },
    { output: 6, position: [1.71, 3.66, 1.31], box: side },
    { output: 7, position: [1.64, 0.52, 1.31], box: side, inverted: true },
  ],
};

/**
 * The same room with a 7.1 system, one speaker on each output of the interface in its usual order
 * (backs before sides), each with a level of its own.
 */
export const surroundRoom: RoomSpec = {
  ...satelliteRoom,
  seed: 42,
  speakers: [
    ...satelliteRoom.speakers.slice(0, 4),
    { output: 4, position: [0.42, 3.31, 1.24], box: side, gainDb: 1.5 },
    { output: 5, position: [0.46, 0.83, 1.24], box: side, gainDb: -0.7 },
    { output: 6, position: [2.21, 3.66, 1.31], box: side },
    { output: 7, position: [2.14, 0.52, 1.31], box: side, inverted: true, gainDb: -1.1 },
  ],
};
