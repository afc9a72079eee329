// NIOSH publication 98-126 (1998), table 1-1: time a day allowed at a level, criterion 85 dB(A),
// exchange rate 3 dB. The table was not at hand; its values as its formula gives them, rounded.
import { describe, it } from 'vitest';
import { noiseDose } from '../../dsp/level/noise-dose';
import { expectClose } from '../close';

describe('noise exposure', () => {
  it.each([
    [85, 8 * 3600],
    [88, 4 * 3600],
    [91, 2 * 3600],
    [94, 3600],
    [97, 1800],
    [100, 900],
  ])('at %d dB(A) allows %d s', (db, seconds) => {
    expectClose(noiseDose(db, seconds), 1, 1e-9);
  });

  it('at 115 dB(A) allows 28 s', () => {
    expectClose(noiseDose(115, 28), 1, 0.02, 'the table is rounded to a second');
  });
});
