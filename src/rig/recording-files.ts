/** What is saved of a take and read back from its recording, as one part that is loaded late. */
export { captureFromWav } from './recording-capture';
export { takeFiles } from './recording-stimulus';
