import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/charts/arrival-lanes';
import type { ArrivalLanes } from '../../../components/charts/arrival-lanes';
import type { CopyButton } from '../../../components/charts/copy-button';
import type { Lane } from '../../../components/charts/lane';
import { groupColour } from '../../../components/group-colour';
import type { Layout } from '../../../src/system/channel';
import { emptyReading, inventedReadings, layout19, layout524, layoutOne } from '../fixtures';
import { find, findAll, mount, notNumbers, overlappingTexts, plain, settle } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

function lanes(layout: Layout): Lane[] {
  const readings = inventedReadings(layout);
  return layout.channels.map((channel, i) => ({
    channel: channel.label,
    name: channel.name,
    colour: groupColour(channel.group),
    stage: 'read',
    reading: readings.channels[i] ?? null,
  }));
}

const at = { referenceDistanceMetres: 2.4, speedOfSound: 343.2 };

function lane(chart: ArrivalLanes, label: string): SVGElement {
  return find<SVGElement>(chart, `[data-channel="${label}"]`);
}

describe('the lanes of arrivals', () => {
  for (const [name, layout] of [
    ['one speaker', layoutOne],
    ['eleven speakers', layout524],
    ['nineteen speakers', layout19],
  ] as const) {
    for (const width of [326, 640, 1060]) {
      it(`shows ${name} at ${width} px without overlap and without nonsense`, async () => {
        const chart = await mount('ll-arrival-lanes', { lanes: lanes(layout), ...at }, width);
        expect(findAll(chart, '.lane')).toHaveLength(layout.channels.length);
        expect(overlappingTexts(chart)).toEqual([]);
        expect(notNumbers(chart)).toEqual([]);
        expect(find(chart, 'svg').getBoundingClientRect().width).toBeLessThanOrEqual(width);
      });
    }
  }

  it('marks the arrival at its time of flight and says the distance', async () => {
    const chart = await mount('ll-arrival-lanes', { lanes: lanes(layoutOne), ...at }, 640);
    const mark = find<SVGLineElement>(chart, 'line.arrival');
    const ticks = findAll<SVGTextElement>(chart, 'text.tick').map((tick) => ({
      text: plain(tick.textContent ?? ''),
      x: Number(tick.getAttribute('x')),
    }));
    const [seven, eight] = ['7', '8'].map(
      (text) => ticks.find((tick) => tick.text === text)?.x ?? 0,
    );
    if (seven === undefined || eight === undefined) throw new RangeError('no ticks');
    // The reference stands at 2.40 m: 2.4/343.2 s is 6.993 ms.
    const expected = seven - 0.007 * (eight - seven);
    expect(Math.abs(Number(mark.getAttribute('x1')) - expected)).toBeLessThan(0.3);
    expect(plain(lane(chart, 'FL').textContent ?? '')).toBe('FL 2.40 m');
  });

  it('says the interval of a distance that is not known well', async () => {
    const [first] = lanes(layoutOne);
    if (!first?.reading) throw new RangeError('no lane');
    const reading = { ...first.reading, distanceInterval: [1.9, 3.1] as const };
    const chart = await mount('ll-arrival-lanes', { lanes: [{ ...first, reading }], ...at });
    expect(plain(lane(chart, 'FL').textContent ?? '')).toBe('FL 2.4 m, 1.9–3.1');
  });

  it('says milliseconds above and the metres they stand for below', async () => {
    const chart = await mount('ll-arrival-lanes', { lanes: lanes(layoutOne), ...at }, 640);
    const ticks = findAll(chart, 'text.tick').map((tick) => plain(tick.textContent ?? ''));
    expect(ticks).toContain('10');
    expect(ticks).toContain('3.43');
  });

  it('names the path over the ceiling of a bounced height', async () => {
    const chart = await mount('ll-arrival-lanes', { lanes: lanes(layout524), ...at }, 900);
    expect(plain(lane(chart, 'TpBL').textContent ?? '')).toMatch(/\d\.\d\d m over the ceiling/);
    expect(find(chart, 'line.ceiling')).toBeTruthy();
  });

  it('says what each lane waits for', async () => {
    const stages = ['read', 'reading', 'heard', 'sweeping', 'waiting'] as const;
    const some = lanes(layout524)
      .slice(0, 5)
      .map((one, i): Lane => ({
        ...one,
        stage: stages[i] ?? 'idle',
        reading: i === 0 ? one.reading : null,
      }));
    const chart = await mount('ll-arrival-lanes', { lanes: some, ...at });
    const said = findAll<SVGElement>(chart, '.lane').map((one) => plain(one.textContent ?? ''));
    expect(said).toEqual([
      'FL 2.40 m',
      'FR reading now',
      'FC heard, not read yet',
      'Sub 1 sweeping now',
      'SiL',
    ]);
    const named = (label: string) => plain(lane(chart, label).getAttribute('aria-label') ?? '');
    expect(named('SiL')).toBe('SiL, side left, waiting');
    expect(named('FR')).toBe('FR reading now, front right');
    expect(named('FL')).toMatch(/^FL 2\.40 m, front left, arrival \S+ ms$/);
  });

  it('says what went wrong instead of a distance', async () => {
    const [first, second, third] = lanes(layout524);
    if (!first?.reading || !second?.reading || !third) throw new RangeError('no lanes');
    const chart = await mount('ll-arrival-lanes', {
      lanes: [
        { ...first, reading: emptyReading('FL') },
        { ...second, reading: { ...second.reading, polarity: 'inverted' } },
        { ...third, reading: null },
      ],
      ...at,
    });
    expect(plain(lane(chart, 'FL').textContent ?? '')).toBe('FL nothing heard');
    expect(plain(lane(chart, 'FR').textContent ?? '')).toContain('inverted');
    expect(plain(lane(chart, 'FC').textContent ?? '')).toBe('FC nothing heard');
    expect(notNumbers(chart)).toEqual([]);
  });

  it('selects speakers by arrow keys and by a click', async () => {
    const chart = await mount('ll-arrival-lanes', { lanes: lanes(layout524), ...at });
    const picked: (string | null)[] = [];
    chart.addEventListener('ll-select', (event) => {
      picked.push(event.detail);
      chart.selected = event.detail;
    });
    find(chart, '[role=listbox]').focus();
    for (const key of ['{ArrowDown}', '{ArrowDown}', '{ArrowUp}', '{ArrowUp}', '{End}']) {
      await userEvent.keyboard(key);
      await settle(chart);
    }
    expect(picked).toEqual(['FL', 'FR', 'FL', 'FL', 'Sub 2']);
    expect(lane(chart, 'Sub 2').getAttribute('aria-selected')).toBe('true');
    lane(chart, 'FC').dispatchEvent(new MouseEvent('click', { bubbles: true }));
    expect(picked.at(-1)).toBe('FC');
  });

  it('holds all readings as a table and to copy', async () => {
    const chart = await mount('ll-arrival-lanes', { lanes: lanes(layout524), ...at });
    await userEvent.click(find(chart, 'summary'));
    await settle(chart);
    expect(findAll(chart, 'tbody tr')).toHaveLength(11);
    const cells = findAll(chart, 'tbody tr:first-child > *').map((cell) => plain(cell.textContent));
    expect(cells.slice(0, 5)).toEqual(['FL', '0.000', '2.400', '2.396–2.404', '–']);
    expect(find<CopyButton>(chart, 'll-copy-button').written.split('\n')[1]).toMatch(
      /^FL\t0\t2\.4\t2\.396\t/,
    );
  });

  it('holds the interval of every level beside it', async () => {
    const [first] = lanes(layoutOne);
    if (!first?.reading) throw new RangeError('no lane');
    const reading = { ...first.reading, levelDb: -30, levelInterval: [-30.25, -29.875] as const };
    const chart = await mount('ll-arrival-lanes', { lanes: [{ ...first, reading }], ...at });
    await userEvent.click(find(chart, 'summary'));
    await settle(chart);
    const [heads, cells] = ['thead th', 'tbody tr > *'].map((those) =>
      findAll(chart, those).map((cell) => plain(cell.textContent)),
    );
    const place = heads?.indexOf('level, dB') ?? -1;
    expect(heads?.[place + 1]).toBe('90 %, dB');
    expect(cells?.slice(place, place + 2)).toEqual(['−30.0', '−30.25 to −29.88']);
    const [names, values] = find<CopyButton>(chart, 'll-copy-button')
      .written.split('\n')
      .map((line) => line.split('\t'));
    const low = names?.indexOf('level low dB') ?? -1;
    expect(values?.slice(low - 1, low + 2)).toEqual(['-30', '-30.25', '-29.875']);
  });

  it('says so when the plan has no speakers', async () => {
    const chart = await mount('ll-arrival-lanes', { lanes: [], ...at });
    expect(find(chart, 'p').textContent).toBe('No speakers in the plan.');
  });
});
