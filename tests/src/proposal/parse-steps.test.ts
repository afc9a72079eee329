import { describe, expect, it } from 'vitest';
import { checkProcessor } from '../../../src/proposal/check-processor';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { parseSteps } from '../../../src/proposal/parse-steps';
import { isTrouble } from '../../../src/trouble';

describe('parseSteps', () => {
  it.each([
    ['40,60, 80', [40, 60, 80]],
    ['40;60\n80.5', [40, 60, 80.5]],
    ['  40 Hz 60hz, 80 HZ ', [40, 60, 80]],
    ['40.', [40]],
  ])('reads “%s”', (text, steps) => {
    expect(parseSteps(text)).toEqual(steps);
  });

  it.each([
    ['', 'there is none'],
    [' , ', 'there is none'],
    ['40, sixty', '“sixty” is not a number'],
    ['40, NaN', '“NaN” is not a number'],
    ['1e3', '“1e3” is not a number'],
    ['40, Infinity', 'not a number'],
    ['-40, 60', '-40 is not above 0'],
    ['0, 60', '0 is not above 0'],
    ['5, 60', '5 does not lie between 15 and 500 Hz'],
    ['80, 1000', '1000 does not lie between 15 and 500 Hz'],
    ['60, 40', '40 comes after 60, out of order'],
    ['40, 60, 60', '60 stands there twice'],
    ['9'.repeat(400), 'not a number'],
  ])('refuses “%s”', (text, why) => {
    const answer = parseSteps(text);
    if (!isTrouble(answer)) throw new Error('not refused');
    expect(answer.trouble).toBe('bad-steps');
    expect(answer.sentence).toContain(why);
    expect(answer.sentence).toContain('such as 40, 60');
  });
});

describe('checkProcessor', () => {
  it('finds nothing wrong with the steps to start from', () => {
    expect(checkProcessor(defaultProcessorSteps)).toBeNull();
  });

  it.each([
    [{ crossoverHz: [] }, 'there is none'],
    [{ crossoverHz: [40, NaN] }, 'NaN is not a number'],
    [{ distanceStepMetres: 0 }, 'distance step must be above 0'],
    [{ distanceStepMetres: NaN }, 'distance step must be above 0'],
    [{ levelRangeDb: [12, -12] as const }, 'level range must run from low to high'],
    [{ levelRangeDb: [-Infinity, 12] as const }, 'level range must run from low to high'],
    [{ levelStepDb: 1, levelRangeDb: [0.2, 0.8] as const }, 'holds no whole step of 1 dB'],
  ])('refuses %o', (wrong, why) => {
    const answer = checkProcessor({ ...defaultProcessorSteps, ...wrong });
    expect(answer?.trouble).toBe('bad-steps');
    expect(answer?.sentence).toContain(why);
  });
});
