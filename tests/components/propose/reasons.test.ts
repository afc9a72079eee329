import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import { groundText } from '../../../components/propose/reasons/ground-text';
import '../../../components/propose/reasons/reason-list';
import { emptyReading, inventedReadings, layout524 } from '../fixtures';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

const readings = inventedReadings(layout524);
const fields = [
  'arrivalSeconds',
  'distanceMetres',
  'levelDb',
  'polarity',
  'rolloff',
  'distortion',
  'bass',
] as const;

describe('reasons', () => {
  it('open by keyboard to the readings, lead to the speaker, and to the rule', async () => {
    const list = await mount('ll-reasons', {
      readings,
      reasons: [
        { sentence: 'SiL decides.', grounds: [{ channel: 'SiL', field: 'rolloff' }] },
        { sentence: 'A rule alone.', grounds: [] },
      ],
      rule: 'Common practice.',
    });
    const picked: unknown[] = [];
    list.addEventListener('ll-select', (event) => picked.push(event.detail));
    const [details, rule] = findAll<HTMLDetailsElement>(list, 'details');
    expect(details?.open).toBe(false);
    details?.querySelector('summary')?.focus();
    await userEvent.keyboard('{Enter}');
    await settle(list);
    expect(details?.open).toBe(true);
    expect(textOf(find(list, '.grounds'))).toMatch(/^SiL reads −3 dB at \d+ Hz \(\d+–\d+\)/);
    await userEvent.click(find(list, '.grounds button'));
    expect(picked).toEqual(['SiL']);
    expect(plain(rule?.textContent ?? '')).toContain('Common practice.');
  });

  it('tell every reading as a sentence, also one in which nothing could be told', () => {
    for (const one of [readings.channels[3] ?? null, emptyReading('SiL'), null]) {
      for (const field of fields) {
        const said = groundText(field, one);
        expect(said).toMatch(/^[a-z].*\.$/);
        expect(said).not.toMatch(/NaN|null|undefined/);
      }
    }
  });

  it('tell the interval of a level whose ends read differently', () => {
    const one = readings.channels[3] ?? expect.fail('no reading');
    const said = (levelInterval: readonly [number, number]): string =>
      plain(groundText('levelDb', { ...one, levelDb: -30, levelInterval }));
    expect(said([-30.4, -29.7])).toBe(
      'reads −30.0 dB re full scale at the seat (90 % between −30.4 and −29.7 dB).',
    );
    expect(said([-30.02, -29.98])).toBe('reads −30.0 dB re full scale at the seat.');
  });
});
