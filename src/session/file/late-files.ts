import { late } from '../../late';

/** Session files: packing and unpacking is loaded before the first is saved or opened. */
export const lateFiles = late(() => import('./session-files'));
