/** Writing and reading session files, as one part that is loaded late. */
export { placeSession } from './place-session';
export { readSessionFile } from './read-session-file';
export { sessionFileName } from './session-file';
export { writeSessionFile } from './write-session-file';
