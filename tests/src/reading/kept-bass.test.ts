import { describe, expect, it } from 'vitest';
import * as v from 'valibot';
import { sealedResponse } from '../../../dsp/rolloff/box-response';
import { rolloffBands } from '../../../dsp/rolloff/rolloff-bands';
import { seededRandom } from '../../../dsp/signal/random';
import { bassBands, keepBass } from '../../../src/reading/kept-bass';
import { readRolloffTogether } from '../../../src/reading/read-rolloff-together';
import { readOrder } from '../../../src/reading/read-order';
import { readingsSchema } from '../../../src/schema/readings-schema';
import { expectClose } from '../../close';
import { makeModalRoom, modalResponse } from '../../dsp/rolloff/modal-room';
import { readingOf, readingsOf } from '../proposal/sample-readings';

const room = makeModalRoom([4.8, 3.9, 2.6], [0.4, 0.3], seededRandom(3));
const response = modalResponse(room, [0.8, 1, 1], [3.1, 2, 1.2], sealedResponse(60, 0.8));
const hum = modalResponse(room, [1, 0.5, 1], [2, 3, 1.2], sealedResponse(20, 0.7));
const noise = { ...hum, samples: hum.samples.map((value) => value / 30) };
const bands = rolloffBands(response, noise);
const kept = keepBass(bands);

describe('the bass of a reading', () => {
  it('comes back as it was, to six digits, also through JSON', () => {
    const back = bassBands(JSON.parse(JSON.stringify(kept)) as typeof kept);
    const relative = (a: Float64Array, b: Float64Array): number[] =>
      Array.from(a, (value, k) => Math.abs(value - (b[k] ?? NaN)) / Math.abs(value || 1));
    for (const field of ['hz', 'power', 'noisePower', 'lines'] as const) {
      expect(Math.max(...relative(bands[field], back[field]))).toBeLessThan(1e-5);
    }
    expect(back.early.map(({ seconds }) => seconds)).toEqual(
      bands.early.map(({ seconds }) => seconds),
    );
  });

  it('gives the roll-off that the response gave', () => {
    const direct = readRolloffTogether([{ channel: 'FL', bands }], false).rolloff;
    const heard = [{ channel: 'FL', seat: 'seat-1', bass: kept } as const];
    const order = { channels: ['FL'], isSub: false, sheetF3Hz: null, heard } as const;
    expect(direct).not.toBeNull();
    // Six digits of power move a frequency by less than this.
    expectClose(readOrder(order).rolloff, direct, 0.05);
  });

  it('leaves away early parts through other windows than today’s', () => {
    const old = { ...kept, early: kept.early.map((part) => ({ ...part, seconds: 0.05 })) };
    expect(bassBands(old).early).toEqual([]);
    const one = { ...kept, early: kept.early.slice(0, 1) };
    expect(bassBands(one).early).toEqual([]);
  });

  it('lies in stored readings, or does not, as in those of older sessions', () => {
    const readings = readingsOf('2.0');
    const [first] = readings.channels;
    expect(first?.bassBands).toBeUndefined();
    expect(v.safeParse(readingsSchema, readings).success).toBe(true);
    const channels = [readingOf('FL', { bassBands: kept }), readingOf('FR')];
    const parsed = v.parse(readingsSchema, { ...readings, channels });
    expect(parsed.channels[0]?.bassBands).toEqual(kept);
  });

  it('is refused when it has another number of bands', () => {
    const short = { ...kept, power: kept.power.slice(1) };
    const channels = [readingOf('FL', { bassBands: short })];
    expect(v.safeParse(readingsSchema, { ...readingsOf('2.0'), channels }).success).toBe(false);
  });
});
