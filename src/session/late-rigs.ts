import { late } from '../late';

/** The practice room. */
export const latePractice = late(() => import('../rig/practice'));

/** The rig of this computer: the library under it tries out what the browser can when it loads. */
export const lateLive = late(() => import('../rig/live/live-rig'));

/** The files of a take that something else plays and records. */
export const lateRecording = late(() => import('../rig/recording-files'));
