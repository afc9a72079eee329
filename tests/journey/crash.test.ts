import { describe, expect, it } from 'vitest';
import { runCrashes } from './crash/run-crashes';

describe('a whole job in the practice room', () => {
  // The twenty moments of `npm run endurance -- crash` take longer than a test may.
  it('loses nothing that was said to be saved, wherever it is killed', async () => {
    const moments: string[] = [];
    await runCrashes({ kills: 3, seed: 11, say: (moment) => moments.push(moment) });
    expect(moments).toHaveLength(3);
  });
});
