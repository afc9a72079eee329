import { describe, expect, it } from 'vitest';
import { nothingChosen } from '../../../src/proposal/choices';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { packTerms, unpackTerms } from '../../../src/session/packed-terms';
import { sampleReadings } from '../../components/sample-readings';
import { pureBass } from '../proposal/sample-bass';
import { layoutNamed } from '../proposal/sample-readings';

const layout = layoutNamed('5.1');
const whole = sampleReadings(layout);
const readings = {
  ...whole,
  channels: whole.channels.map((one, n) => ({ ...one, bass: pureBass(0.001 * n + 0.0005) })),
};
const terms = {
  readings,
  layout,
  processor: defaultProcessorSteps,
  options: {
    sheet: null,
    seat: 'Seat 1',
    otherSeats: [{ name: 'Seat “2”, é', readings: { ...readings, takeId: 'other' } }],
    choices: nothingChosen,
    together: [],
  },
};

describe('terms for a worker', () => {
  it('come back as they were, digit for digit', () => {
    expect(unpackTerms(structuredClone(packTerms(terms)))).toEqual(terms);
  });

  it('hold the same bytes for the same readings', () => {
    expect(packTerms(terms).readings).toBe(packTerms({ ...terms }).readings);
  });
});
