import { expect, it } from 'vitest';
import { atSameFrequency } from '../../../dsp/distortion/at-same-frequency';
import { synchronisedSweep } from '../../../dsp/signal/sweep';
import { distort, harmonicsOf, rate, readPlayed } from './distorted-sweep';

it('gives the harmonics of the drive back from behind a filter', () => {
  const sweep = synchronisedSweep(10, 20_000, 2 ** 17, rate);
  const polynomial = { a2: 0.03, a3: 0.04, a4: 0, a5: 0 };
  const [h1 = 1, h2 = 0, h3 = 0] = harmonicsOf(polynomial);
  // A one-pole low-pass at 200 Hz.
  const keep = Math.exp((-2 * Math.PI * 200) / rate);
  const response = Float64Array.from({ length: 4000 }, (_, n) => (1 - keep) * keep ** n);
  const played = distort(sweep, polynomial);
  const reading = readPlayed(played, sweep, { response, arrival: 0 }, -140, 1);
  const bare = atSameFrequency(reading);
  for (const [at, amplitude] of [h2, h3].entries()) {
    const heard = reading.harmonics[at]?.db ?? [];
    const own = bare.harmonics[at]?.db ?? [];
    for (const [i, hz] of reading.hz.entries()) {
      if (hz < 40 || hz > 2000) continue;
      const expected = 20 * Math.log10(amplitude / h1);
      expect(Math.abs((own[i] ?? 99) - expected)).toBeLessThan(0.3);
      const filtered =
        expected + 10 * Math.log10((1 + (hz / 200) ** 2) / (1 + (((at + 2) * hz) / 200) ** 2));
      expect(Math.abs((heard[i] ?? 99) - filtered)).toBeLessThan(0.4);
    }
  }
});
