/** All that a bench runs, as one part that is loaded late: it weighs more than the bench itself. */
export { parseCalibration } from '../../microphone/parse-calibration';
export { runClimb, runSoundLevelCalibration } from './climb-run';
export { createNoiseRun } from './noise-run';
export { runProof, toProve } from './proof-run';
export { importRecording, wholeTake } from './recorded-take';
export { runTakes } from './run-takes';
export { runStop } from './walk-run';
