import { describe, expect, it } from 'vitest';
import '../../../../components/theme/base.css';
import '../../../../components/probe/take/geometry-findings';
import '../../../../components/probe/take/noise-findings';
import { hiddenBandsWords, noiseFloorWords } from '../../../../components/probe/take/noise-words';
import type { Readings } from '../../../../src/reading/reading';
import type { DeclaredSystem } from '../../../../src/system/declared-system';
import { layoutOf } from '../../fake-bench';
import { findAll, mount, notNumbers, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { sampleReadings } from '../../sample-readings';

expectQuiet();

const layout = layoutOf('5.1');
const bands = [31.6, 63.1, 125.9, 251.2, 501.2, 1000, 1995.3, 3981.1, 7943.3, 15848.9];

/** Invented readings with margins; the lowest band of SiL lies in the noise. */
function withNoise(): Readings {
  const readings = sampleReadings(layout);
  return {
    ...readings,
    capture: { ...readings.capture, noise: { hz: bands, db: bands.map(() => -90) } },
    channels: readings.channels.map((one) => ({
      ...one,
      margins: {
        hz: bands,
        marginDb: bands.map((_, k) => (one.channel === 'SiL' && k === 0 ? 4 : 40)),
      },
    })),
  };
}

describe('what distances say on the Take sheet', () => {
  const place = (azimuthDegrees: number, distanceMetres: number) => ({
    azimuthDegrees,
    elevationDegrees: 0,
    distanceMetres,
  });

  it('is hidden while there is nothing to compare', async () => {
    const shown = await mount('ll-geometry-findings', { readings: null, layout }, 600);
    expect(shown.hidden).toBe(true);
    expect(textOf(shown)).toBe('');
  });

  it('marks what wants action, and only that', async () => {
    const readings = sampleReadings(layout);
    const of = (label: string): number =>
      readings.channels.find(({ channel }) => channel === label)?.distanceMetres ?? 0;
    const system: DeclaredSystem = {
      places: {
        FL: place(30, of('FL')),
        FR: place(-30, of('FR') + 0.8),
        FC: place(0, of('FC')),
        SiL: place(110, of('SiL')),
        SiR: place(-110, of('SiR')),
      },
      bounced: [],
      room: null,
      seats: [],
    };
    const shown = await mount('ll-geometry-findings', { readings, layout, system }, 600);
    expect(textOf(shown)).toContain('Distances and plan do not agree');
    const marked = findAll(shown, 'p.signal');
    expect(marked.length).toBe(1);
    expect(plain(marked[0]?.textContent ?? '')).toMatch(/FR reads .* 0\.80 m too near/);
    expect(findAll(shown, 'p').length).toBe(2);
  });

  it('follows the readings it is given', async () => {
    const shown = await mount(
      'll-geometry-findings',
      { readings: sampleReadings(layout), layout },
      600,
    );
    expect(textOf(shown)).toContain('Left and right are not equally far');
    shown.readings = null;
    await settle(shown);
    expect(shown.hidden).toBe(true);
  });
});

describe('noise on the Take sheet', () => {
  it('is re full scale until the sound level is calibrated, then rated', () => {
    const { capture } = withNoise();
    expect(plain(noiseFloorWords(capture, null))).toMatch(
      /−72\.0 dBFS\. Calibrate the sound level/,
    );
    // 30 dB in every band: NC 30 at 2 kHz is 29 and at 8 kHz 27; NR (30 + 8)/1.03 at 8 kHz.
    expect(plain(noiseFloorWords(capture, 120))).toBe(
      'The noise floor is NC 33 and NR 37; 8 kHz decides.',
    );
    expect(plain(noiseFloorWords(capture, 80))).toContain('under NC 15');
    expect(plain(noiseFloorWords(capture, 190))).toContain('over every NC curve');
  });

  it('says what to do where it cannot be rated', async () => {
    const { capture } = withNoise();
    const silent = { ...capture, noise: null };
    for (const offsetDb of [null, 120]) {
      expect(noiseFloorWords(silent, offsetDb)).toContain('start the recording before the take');
    }
    const few = { ...capture, noise: { hz: bands.slice(3), db: bands.slice(3).map(() => -90) } };
    expect(noiseFloorWords(few, 120)).toContain('repeat the take');
    const readings = { ...sampleReadings(layout), capture: silent };
    const shown = await mount('ll-noise-findings', { readings }, 600);
    expect(shown.hidden).toBe(false);
    expect(textOf(shown)).toContain('too little silence');
    expect(findAll(shown, 'details')).toEqual([]);
  });

  it('names the bands that the noise hides', async () => {
    const { channels } = withNoise();
    expect(plain(hiddenBandsWords(channels))).toContain('not to be trusted there: SiL at 31.5 Hz.');
    expect(plain(hiddenBandsWords([]))).toContain('Every band of every speaker stands 10 dB');
    const shown = await mount('ll-noise-findings', { readings: withNoise() }, 600);
    expect(findAll(shown, 'td.under').map((one) => plain(one.textContent ?? '').trim())).toEqual([
      '4',
    ]);
    expect(findAll(shown, 'tbody tr').length).toBe(6);
    expect(notNumbers(shown)).toEqual([]);
  });

  it('is hidden for readings that know no noise', async () => {
    const shown = await mount('ll-noise-findings', { readings: sampleReadings(layout) }, 600);
    expect(shown.hidden).toBe(true);
  });

  it('fits every width', async () => {
    for (const width of [340, 700]) {
      const shown = await mount('ll-noise-findings', { readings: withNoise() }, width);
      const details = findAll(shown, 'details')[0];
      if (details instanceof HTMLDetailsElement) details.open = true;
      await settle(shown);
      expect(shown.scrollWidth).toBeLessThanOrEqual(width);
    }
  });
});
