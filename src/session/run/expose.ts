import type { SoundLevelCalibration } from '../../microphone/calibration';
import type { Capture, Rig } from '../../rig/port';
import { addExposure, exposureOfCapture } from '../../soundlevel/exposure';
import type { Desk } from '../desk';
import { soundLevelHere } from './sound-level-here';

/** Seconds of a capture that are weighed at once, so that the screen never waits. */
const pieceSeconds = 4;

/** Adds what a take sounded like to what the person in the room has taken; simulated sound harms nobody. */
export async function exposeCapture(desk: Desk, capture: Capture): Promise<void> {
  if (capture.simulated || capture.rig !== 'live') return;
  const soundLevel = soundLevelHere(desk.state.document);
  const { samples, sampleRate } = capture;
  const step = Math.round(pieceSeconds * sampleRate);
  let { exposure } = desk.state;
  for (let at = 0; at < samples.length; at += step) {
    const piece = samples.subarray(at, at + step);
    exposure = exposureOfCapture(exposure, piece, sampleRate, soundLevel);
    await new Promise((resolve) => setTimeout(resolve, 0));
  }
  desk.set({ exposure });
}

/** The same for an open line: a function that takes its A-weighted level in dB re full scale. */
export function exposeLine(
  desk: Desk,
  rig: Rig,
  soundLevel: SoundLevelCalibration | null,
): (aWeightedDb: number, seconds: number) => void {
  return (aWeightedDb, seconds) => {
    if (rig.simulated) return;
    desk.set({ exposure: addExposure(desk.state.exposure, aWeightedDb, seconds, soundLevel) });
  };
}
