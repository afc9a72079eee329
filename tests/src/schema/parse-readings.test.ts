import { describe, expect, it } from 'vitest';
import { parseReadings } from '../../../src/schema/parse-readings';
import { isTrouble } from '../../../src/trouble';
import { roomyBass } from '../proposal/sample-bass';
import { exampleReadings } from './example-readings';

describe('parseReadings', () => {
  it('brings readings back as they were printed', () => {
    expect(parseReadings(JSON.stringify(exampleReadings()))).toEqual(exampleReadings());
  });

  it('brings the bass of channels back, and readings that have none', () => {
    const readings = exampleReadings();
    const [first, ...others] = readings.channels;
    if (!first) return expect.fail('no channel');
    const channels = [{ ...first, bass: roomyBass(0.001, 1) }, ...others];
    const text = JSON.stringify({ ...readings, channels });
    expect(parseReadings(text)).toEqual({ ...readings, channels });
  });

  it('brings the interval of a level back, and readings of older sessions that have none', () => {
    const readings = exampleReadings();
    const [first, second, ...others] = readings.channels;
    if (!first || !second) return expect.fail('no channels');
    const channels = [
      { ...first, levelInterval: [-38.2, -37.9] as const },
      { ...second, levelInterval: null },
      ...others,
    ];
    const told = parseReadings(JSON.stringify({ ...readings, channels }));
    expect(told).toEqual({ ...readings, channels });
    expect(isTrouble(told) ? told : told.channels[2]).not.toHaveProperty('levelInterval');
  });

  it('takes readings whose curves were left away', () => {
    const text = JSON.stringify(exampleReadings(), (key, value: unknown) =>
      key === 'curves' ? undefined : value,
    );
    expect(text).not.toContain('curves');
    expect(parseReadings(text)).toEqual(exampleReadings());
  });

  it.each<[string, (readings: Mutable) => void, RegExp]>([
    [
      'a take instead',
      (readings) => (readings.format = 'leadline-take'),
      /"format" is "leadline-take"/,
    ],
    [
      'bass of too few frequencies',
      (readings) => (at(readings, 0).bass = { re: [1], im: [0] }),
      /"channels\[0\]\.bass" is an object and should be two columns of 241 numbers/,
    ],
    ['another version', (readings) => (readings.version = 7), /"version" is 7/],
    [
      'a null where a number stands',
      (readings) => (readings.clock = null),
      /"clock" is null and should be an object/,
    ],
    [
      'no channels',
      (readings) => (readings.channels = []),
      /"channels" is a list and should be longer/,
    ],
    [
      'an unknown polarity',
      (readings) => (at(readings, 1).polarity = 'maybe'),
      /"channels\[1\]\.polarity" is "maybe"/,
    ],
    [
      'a reversed interval',
      (readings) => (at(readings, 0).arrivalInterval = [2, 1]),
      /"channels\[0\]\.arrivalInterval" is a list and should be an interval/,
    ],
    [
      'a level whose interval is reversed',
      (readings) => (at(readings, 0).levelInterval = [-37, -38]),
      /"channels\[0\]\.levelInterval" is a list and should be an interval/,
    ],
    [
      'a meaningless layout',
      (readings) => (readings.layout = 'stereo'),
      /layout "stereo" means nothing/,
    ],
    [
      'a channel of another layout',
      (readings) => (at(readings, 2).channel = 'BL'),
      /BL is not a channel of layout 3\.1/,
    ],
    [
      'a channel read twice',
      (readings) => (at(readings, 1).channel = 'FL'),
      /channel FL is there twice/,
    ],
    [
      'a foreign reference',
      (readings) => (readings.reference = 'TpFL'),
      /TpFL is not a channel of layout 3\.1/,
    ],
  ])('refuses %s and says where', (_what, change, finding) => {
    const readings: Mutable = JSON.parse(JSON.stringify(exampleReadings()));
    change(readings);
    const result = parseReadings(JSON.stringify(readings));
    expect(result).toMatchObject({ trouble: 'bad-file' });
    expect(isTrouble(result) && result.sentence).toMatch(finding);
  });
});

type Mutable = Record<string, unknown> & { channels: Record<string, unknown>[] };

function at(readings: Mutable, index: number): Record<string, unknown> {
  return readings.channels[index] ?? expect.fail(`no channel ${index}`);
}
