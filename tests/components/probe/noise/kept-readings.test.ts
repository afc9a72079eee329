import { describe, expect, it } from 'vitest';
import '../../../../components/theme/base.css';
import '../../../../components/probe/noise/noise-sheet';
import { benchWith } from '../../bench-of';
import { inventedReadings, layout524 } from '../../fixtures';
import { find, findAll, mount, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { inventedNoise, keptReading } from './invented-noise';

expectQuiet();

const button = (root: Element, words: string) => {
  const found = findAll<HTMLButtonElement>(root, 'button').find(
    (one) => plain(one.textContent ?? '') === words,
  );
  if (!found) throw new RangeError(`no button ${words}`);
  return found;
};

describe('kept readings', () => {
  it('are listed, and the newest is drawn against the sweep', async () => {
    const noiseReadings = [keptReading({ id: 'old', channel: 'FR' }), keptReading()];
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const list = find(sheet, 'll-kept-readings');
    expect(textOf(list)).toMatch(/FL noise ?, simulated −31\.2 dB – 15 s Seat 1/);
    expect(textOf(list)).toContain(
      'Differs from the sweep by 0.50 dB on average and 0.50 dB at most',
    );
    expect(findAll(list, '.curve').map((curve) => curve.getAttribute('data-channel'))).toEqual([
      'FL, sweep',
      'FL, noise',
    ]);
  });

  it('are picked and removed', async () => {
    const noiseReadings = [
      keptReading({ id: 'old', channel: 'FR', kind: 'listening' }),
      keptReading(),
    ];
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const list = find(sheet, 'll-kept-readings');
    find(list, '[aria-label="Show FR, listening"]').click();
    await settle(sheet);
    expect(textOf(list)).toContain('Without arrival');
    expect(find(list, '.curve.lead').getAttribute('data-channel')).toBe('FR, listening');
    button(list, 'Remove FR, listening').click();
    expect(bench.state.document.noiseReadings.map(({ id }) => id)).toEqual(['kept 1']);
  });

  it('say when sweep and noise were taken at different positions', async () => {
    const noiseReadings = [keptReading({ positionId: 'elsewhere' })];
    const bench = benchWith(layout524, inventedReadings(layout524), { noiseReadings });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    expect(textOf(sheet)).toContain('The sweep was taken at another position.');
  });

  it('are not drawn again while noise runs on', async () => {
    const bench = benchWith(layout524, inventedReadings(layout524), {
      noiseReadings: [keptReading()],
    });
    const sheet = await mount('ll-noise-sheet', { bench }, 1000);
    const chart = find<HTMLElementTagNameMap['ll-response-chart']>(sheet, 'll-response-chart');
    const before = chart.traces;
    for (let seconds = 0; seconds < 5; seconds++) {
      bench.set({ activity: { kind: 'noise', noise: inventedNoise({ seconds }) } });
      await settle(sheet);
    }
    expect(chart.traces).toBe(before);
  });
});
