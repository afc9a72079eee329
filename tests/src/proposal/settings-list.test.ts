import { describe, expect, it } from 'vitest';
import { defaultProcessorSteps } from '../../../src/proposal/default-processor-steps';
import { proposeSettings } from '../../../src/proposal/propose-settings';
import { sayValue, settingsList, tickLine } from '../../../src/proposal/settings-list';
import { isTrouble } from '../../../src/trouble';
import { layoutNamed, readingsOf, rolloffAt } from './sample-readings';
import { sampleSheet } from './sample-sheet';

const layout = layoutNamed('3.1');
const sheet = sampleSheet();
const proposal = proposeSettings(
  readingsOf('3.1', {
    FC: { distanceMetres: 2.2, levelDb: null },
    'Sub 1': { rolloff: rolloffAt(25, 22), levelDb: -28 },
  }),
  layout,
  defaultProcessorSteps,
  { sheet },
);
if (isTrouble(proposal)) throw new Error(proposal.sentence);
const list = (typed = {}, by: typeof sheet | null = sheet) =>
  settingsList(proposal, layout, by, typed);

describe('the list to type', () => {
  it("stands in the order and units of the sheet's outputs", () => {
    expect(list().map(({ name, text }) => `${name}: ${text}`)).toEqual([
      'fronts: 70 Hz',
      'centre: 70 Hz',
      // Steps of 0.03 m: 2.50 m is 83.3 steps.
      'Front left: 2.49 m',
      'Front right: 2.49 m',
      'Centre: 2.19 m',
      'Sub 1: 2.49 m',
      'Front left: 0.0 dB',
      'Front right: 0.0 dB',
      'Centre: null',
      'Sub 1: −2.0 dB',
      'Polarity of Sub 1: normal',
      'Sub low-pass: 150 Hz',
      'Low cut: off',
    ]);
  });

  it('leaves out what only a sheet could have without one', () => {
    const names = list({}, null).map(({ name }) => name);
    expect(names.slice(-2)).toEqual(['Sub 1', 'Polarity of Sub 1']);
  });

  it('keeps what was ticked, and shows what has changed since', () => {
    const [first, second] = list();
    if (!first || !second) return expect.fail('no lines');
    const typed = tickLine({ [second.id]: '90 Hz' }, first, true);
    const [ticked, changed, fresh] = list(typed);
    expect(ticked).toMatchObject({ ticked: true, before: null });
    expect(changed).toMatchObject({ ticked: false, before: '90 Hz', text: '70 Hz' });
    expect(fresh).toMatchObject({ ticked: false, before: null });
    expect(tickLine(typed, first, false)).toEqual({ [second.id]: '90 Hz' });
  });

  it('cannot tick what cannot be told', () => {
    const line = list().find(({ text }) => text === null);
    if (!line) return expect.fail('no line without a text');
    expect(tickLine({}, line, true)).toEqual({});
    expect(line.ticked).toBe(false);
  });
});

it('a value has the decimals of its step', () => {
  const value = { costMs: 0, costDb: 0 };
  expect(sayValue({ ...value, value: 8, unit: 'ft', step: 0.5 })).toBe('8.0 ft');
  expect(sayValue({ ...value, value: 2.43, unit: 'm', step: 0.03 })).toBe('2.43 m');
  expect(sayValue({ ...value, value: 1.25, unit: 'dB', step: 0.25 })).toBe('+1.25 dB');
  expect(sayValue({ ...value, value: -1, unit: 'dB', step: 1 })).toBe('−1.0 dB');
});
