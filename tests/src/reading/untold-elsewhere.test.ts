import { describe, expect, it } from 'vitest';
import { readDrives } from '../../../src/reading/lowest-frequency';
import { readDistortion } from '../../../src/reading/read-distortion';
import { tellRolloff } from '../../../src/reading/rolloff-finding';
import { action, click, noiseAt } from './untold-gaps';
import { layoutNamed } from './wired-room';

const layout = layoutNamed('5.1.2');
const rate = 48000;
const clear = click(1, 1e-5, 1);

describe('what a roll-off or distortion cannot tell', () => {
  it.each([0, 1, 7])('is told with one thing to do: %i bands over the noise', (bandsWithMargin) => {
    const told = tellRolloff({ refused: 'noise', bandsWithMargin }, false, null);
    expect(told.rolloff).toBeNull();
    expect(told.notes.join()).toMatch(action);
  });

  const sweep = {
    startHz: 20,
    endHz: 20000,
    lengthSamples: 3 * rate,
    sampleRate: rate,
    fadeInSamples: 480,
    fadeOutSamples: 480,
  };
  const source = { long: clear, silence: noiseAt(1e-5), sweeps: 1, sweep, damaged: false };
  it.each([
    ['a damaged sweep', { damaged: true }],
    ['no sweep', { sweep: null }],
    ['a short sweep', { sweep: { ...sweep, lengthSamples: rate } }],
    ['overlapping sweeps', { long: null }],
    ['no silence', { silence: null }],
  ])('is told with one thing to do: %s', (_, change) => {
    const distortion = readDistortion({ ...source, ...change });
    expect(distortion).toMatchObject({ kind: 'cannot tell' });
    if (distortion.kind === 'cannot tell') expect(distortion.sentence).toMatch(action);
  });
});

describe('the lowest frequency a speaker may be asked for', () => {
  const hz = [20, 28, 40, 56, 80, 113, 160, 226];

  it.each(['noise', 'decay'] as const)(
    'is told with one thing to do where %s hides it',
    (limit) => {
      const hidden = {
        db: hz.map(() => null),
        floorDb: hz.map(() => -5),
        limitedBy: hz.map(() => limit),
      };
      const distortion = {
        kind: 'curves',
        hz,
        fundamentalDb: hz.map(() => -20),
        fundamentalNoiseDb: hz.map(() => -80),
        harmonics: [],
        total: hidden,
        apartFromHz: null,
      } as const;
      const [channel] = layout.channels;
      if (!channel) throw new RangeError('no channel');
      const { lowest } = readDrives(channel, [{ driveDb: 0, distortion }]);
      expect(lowest.length).toBe(3);
      for (const { found, sentence } of lowest) {
        expect(found).toMatchObject({ kind: 'cannot tell', hiddenBy: limit });
        expect(sentence).toMatch(action);
      }
    },
  );
});
