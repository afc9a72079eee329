import { describe, expect, it } from 'vitest';
import { noiseNote } from '../../../src/inspect/noise-note';

describe('noiseNote', () => {
  it('says nothing of a curve that tells all', () => {
    expect(noiseNote({ hz: [20, 40], db: [0, 0] })).toBeNull();
  });

  it('names the ranges', () => {
    const hz = [12.5, 25, 50, 100, 200, 15_000];
    expect(noiseNote({ hz, db: [null, null, 0, null, 0, 0] })).toBe(
      'No response from 12.5 to 25.0 Hz and at 100 Hz: the noise is as strong as the speaker there. More level would settle it.',
    );
  });

  it('counts them when they are many', () => {
    const hz = [1, 2, 3, 4, 5, 6, 7, 800];
    expect(noiseNote({ hz, db: [null, 0, null, 0, null, 0, 0, null] })).toMatch(
      /^No response in 4 ranges between 1\.0 and 800 Hz: /,
    );
  });
});
