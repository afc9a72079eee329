import { describe, expect, it } from 'vitest';
import { nothingChosen } from '../../../src/proposal/choices';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { ParcelOpener, ParcelSender } from '../../../src/parcel';
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
    const packed = structuredClone(packTerms(terms, new ParcelSender()));
    expect(unpackTerms(packed, new ParcelOpener())).toEqual(terms);
  });

  it('take their readings along once, and others when there are others', () => {
    const [sender, opener] = [new ParcelSender(), new ParcelOpener()];
    const send = (what: typeof terms) => structuredClone(packTerms(what, sender));
    unpackTerms(send(terms), opener);
    const again = send({ ...terms, options: { ...terms.options, seat: 'Seat 2' } });
    expect(again.parts.map(({ bytes }) => bytes)).toEqual([null, null]);
    expect(unpackTerms(again, opener)).toEqual({
      ...terms,
      options: { ...terms.options, seat: 'Seat 2' },
    });
    const other = { ...terms, readings: { ...readings, takeId: 'a new one' } };
    expect(unpackTerms(send(other), opener)).toEqual(other);
    expect(unpackTerms(send(terms), opener)).toEqual(terms);
  });
});
