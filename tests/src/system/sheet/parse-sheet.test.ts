import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkProcessor } from '../../../../src/proposal/check-processor';
import { parseSheet } from '../../../../src/system/sheet/parse-sheet';
import { stepsOf } from '../../../../src/system/sheet/steps-of-sheet';
import { isTrouble } from '../../../../src/trouble';
import { expectClose } from '../../../close';
import { sampleNames, sampleSheet, sampleText } from './sample-sheets';

type Field = string | number;

/** The 11-output sample with the value at a path replaced, or taken out when undefined, as JSON has none. */
function changed(path: readonly Field[], value: unknown): string {
  const sheet: unknown = JSON.parse(sampleText('sample-11'));
  let place = sheet as Record<Field, unknown>;
  for (const key of path.slice(0, -1)) place = place[key] as Record<Field, unknown>;
  const last = path.at(-1) ?? '';
  place[last] = value;
  return JSON.stringify(sheet);
}

function refusal(text: string): string {
  const found = parseSheet(text);
  if (!isTrouble(found)) throw new Error('the sheet was taken');
  expect(found.trouble).toBe('bad-file');
  expect(found.sentence).toMatch(/\.$/);
  return found.sentence;
}

const output = (index: number) => ({
  id: `o${index}`,
  name: `Output ${index}`,
  roles: [{ channel: 'FL' }],
});

describe('parseSheet', () => {
  it.each(sampleNames)('takes %s whole, marked invented', (name) => {
    const sheet = sampleSheet(name);
    expect(sheet.invented).toBe(true);
    expect(sheet).toEqual(JSON.parse(sampleText(name)));
  });

  it('takes what it gave, written as JSON again', () => {
    const sheet = sampleSheet('sample-11');
    expect(parseSheet(JSON.stringify(sheet))).toEqual(sheet);
  });

  it.each(Object.keys(JSON.parse(sampleText('sample-11'))))(
    'names the field %s when it is missing',
    (field) => {
      expect(refusal(changed([field], undefined))).toContain(`"${field}" is missing`);
    },
  );

  it.each<[string, Field[], unknown, string]>([
    ['an unknown version', ['version'], 2, '"version" is 2, and only 1 is known'],
    ['another format', ['format'], 'leadline-take', '"format" is "leadline-take"'],
    ['zero outputs', ['outputs'], [], '"outputs" is a list and should be at least one entry'],
    [
      '200 outputs',
      ['outputs'],
      Array.from({ length: 200 }, (_, i) => output(i)),
      '"outputs" is a list and should be at most 64 entries long, not 200',
    ],
    ['an output without a name', ['outputs', 3, 'name'], undefined, '"outputs[3].name" is missing'],
    ['an output without roles', ['outputs', 3, 'roles'], [], '"outputs[3].roles"'],
    [
      'two outputs of one name',
      ['outputs', 3, 'name'],
      'Front left',
      '"outputs[3].name" is "Front left", which another output has',
    ],
    [
      'two outputs of one id',
      ['outputs', 3, 'id'],
      '1',
      '"outputs[3].id" is "1", which another output has',
    ],
    ['a name with a control character', ['outputs', 0, 'name'], 'a\u001b[2Jb', '"outputs[0].name"'],
    ['a name that is empty', ['name'], '', '"name" is ""'],
    ['a name without end', ['name'], 'x'.repeat(61), '"name" is'],
    [
      'a channel that is none',
      ['outputs', 0, 'roles', 0, 'channel'],
      'LFE',
      '"outputs[0].roles[0].channel" is "LFE"',
    ],
    [
      'a field that is not known',
      ['outputs', 0, 'roles', 0, 'onlywithout'],
      ['BL'],
      '"outputs[0].roles[0].onlywithout" is no field that is known',
    ],
    [
      'a role twice',
      ['outputs', 0, 'roles'],
      [{ channel: 'FL' }, { channel: 'FL' }],
      '"outputs[0].roles[1].channel" stands in the same list before',
    ],
    [
      'a role that excludes itself',
      ['outputs', 0, 'roles', 0, 'onlyWithout'],
      ['FR'],
      '"outputs[0].roles[0].onlyWithout" names FR, so FL never fits',
    ],
    ['a pair of a stranger', ['pairs', 0], ['1', '99'], '"pairs[0]" names "99"'],
    ['an output in two pairs', ['pairs', 1], ['1', '5'], '"pairs[1]" names "1" a second time'],
    [
      'a pair with a lonely role',
      ['pairs', 0],
      ['1', '3'],
      '"pairs[0]" joins outputs of which one can carry FL',
    ],
    [
      'chains that wait for each other',
      ['filling', 'channels'],
      [
        [['FL'], ['FC']],
        [['FC'], ['FL']],
      ],
      '"filling.channels[0]" lets "FL" wait for itself',
    ],
    [
      'a chain with a label twice',
      ['filling', 'channels'],
      [[['FL'], ['FL']]],
      '"filling.channels[0]" names "FL" twice',
    ],
    [
      'a chain with what nothing carries',
      ['filling', 'channels'],
      [[['FL'], ['Sub 4']]],
      '"filling.channels[0]" names "Sub 4", and no output can carry it',
    ],
    [
      'a chain of outputs with a stranger',
      ['filling', 'outputs'],
      [[['S1'], ['S9']]],
      '"filling.outputs[0]" names "S9"',
    ],
    [
      'a set of one choice',
      ['exclusive'],
      [{ name: 'x', choices: [{ channels: ['FLw'] }] }],
      '"exclusive[0].choices" has fewer than two',
    ],
    [
      'choices that overlap',
      ['exclusive'],
      [{ name: 'x', choices: [{ channels: ['FLw'] }, { channels: ['FLw'], outputs: ['A1'] }] }],
      '"exclusive[0].choices[1]" and "exclusive[0].choices[0]" share FLw',
    ],
    [
      'a choice its outputs cannot carry',
      ['exclusive'],
      [{ name: 'x', choices: [{ channels: ['FLw'] }, { channels: ['FC'], outputs: ['A1'] }] }],
      '"exclusive[0].choices[1].channels" names FC',
    ],
    [
      'choices of which one needs the other',
      ['exclusive'],
      [{ name: 'x', choices: [{ channels: ['FLw'] }, { channels: ['BL'] }] }],
      '"exclusive[0].choices[1]" excludes what "filling.channels" wants before FLw',
    ],
    [
      'too few names of heights',
      ['heightNaming', '2'],
      ['front'],
      '"heightNaming.2" names 1 pairs',
    ],
    [
      'heights from back to front',
      ['heightNaming', '2'],
      ['back', 'front'],
      '"heightNaming.2" does not go from front to back',
    ],
    [
      'steps out of order',
      ['crossover', 'stepsHz'],
      [80, 60],
      '"crossover.stepsHz[1]" is 60 and comes after 80',
    ],
    ['a step of 0', ['lowCut', 'stepsHz'], [0], '"lowCut.stepsHz[0]" is 0'],
    [
      'limits without a step',
      ['crossover', 'limits'],
      [{ groups: ['fronts'], lowHz: 41, highHz: 49 }],
      '"crossover.limits[0]" leaves no step',
    ],
    [
      'a group limited twice',
      ['crossover', 'limits'],
      [{ groups: ['fronts', 'fronts'], lowHz: 40, highHz: 90 }],
      '"crossover.limits[0]" limits the fronts a second time',
    ],
    [
      'a sub low-pass below all',
      ['subLowPass', 'stepsHz'],
      [30],
      '"subLowPass.stepsHz" ends at 30 Hz',
    ],
    [
      'full range that unlocks itself',
      ['fullRange'],
      [{ group: 'fronts', unlocks: ['fronts'] }],
      '"fullRange[0].group" is unlocked only by what it unlocks',
    ],
    [
      'full range that unlocks a stranger',
      ['fullRange'],
      [{ group: 'fronts', unlocks: ['subs'] }],
      '"fullRange[0].unlocks" names the subs',
    ],
    ['a range upside down', ['level', 'lowDb'], 20, '"level.lowDb" is 20 and "highDb" 12'],
    [
      'a range without a step',
      ['distance'],
      { unit: 'm', step: 5, low: 1, high: 4 },
      '"distance.step" is 5',
    ],
    [
      'a negative distance',
      ['distance', 'low'],
      -1,
      '"distance.low" is -1 and should be at least 0',
    ],
    ['a filter of order 0', ['filters', 'highPass', 'order'], 0, '"filters.highPass.order" is 0'],
  ])('refuses %s and names the field', (_what, path, value, finding) => {
    expect(refusal(changed(path, value))).toContain(finding);
  });

  it('keeps tags and scripts in names as the plain text they are', () => {
    const name = '<script>alert("1")</script> & <b>';
    const sheet = parseSheet(changed(['outputs', 0, 'name'], name));
    expect(isTrouble(sheet) ? sheet.sentence : sheet.outputs[0]?.name).toBe(name);
  });

  it('answers whatever stands at whatever place with a sheet or a sentence', () => {
    const paths = pathsIn(JSON.parse(sampleText('sample-11')));
    fc.assert(
      fc.property(fc.constantFrom(...paths), fc.jsonValue(), (path, value) => {
        const found = parseSheet(changed(path, value));
        if (isTrouble(found)) expect(found.sentence).toMatch(/\.$/);
        else expect(checkProcessor(stepsOf(found))).toBeNull();
      }),
      { seed: 11, numRuns: 500 },
    );
  });
});

describe('stepsOf', () => {
  it('gives metres for a sheet in feet', () => {
    // 0.5 ft and 60 ft; the international foot is 0.3048 m (definition of 1959).
    expectClose(
      stepsOf(sampleSheet('sample-7')),
      {
        crossoverHz: [40, 60, 80, 100, 120, 150, 200],
        distanceStepMetres: 0.1524,
        distanceRangeMetres: [0, 18.288],
        levelStepDb: 1,
        levelRangeDb: [-10, 10],
      },
      1e-9,
    );
  });

  it.each(sampleNames)('gives steps for %s that proposals can use', (name) => {
    expect(checkProcessor(stepsOf(sampleSheet(name)))).toBeNull();
  });
});

/** Every path in a value, without the value itself. */
function pathsIn(value: unknown): Field[][] {
  if (typeof value !== 'object' || value === null) return [];
  const entries: [Field, unknown][] = Array.isArray(value)
    ? [...value.entries()]
    : Object.entries(value);
  return entries.flatMap(([key, inner]) => [
    [key],
    ...pathsIn(inner).map((path) => [key, ...path]),
  ]);
}
