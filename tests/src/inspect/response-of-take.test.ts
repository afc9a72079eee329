import { describe, expect, it } from 'vitest';
import { levelCurve } from '../../../dsp/response/curve';
import { powerToDb } from '../../../dsp/level/decibels';
import { responseCurve, responseOfTake } from '../../../src/inspect/response-of-take';
import type { ChannelLabel } from '../../../src/system/channel';
import { usualFilters, type SettingsInForce } from '../../../src/system/declared-settings';
import { scheduleTake } from '../../../src/take/schedule-take';
import type { Schedule } from '../../../src/take/schedule';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { hearWires, layoutNamed, readingOf, readWires, type Wires } from '../reading/wired-room';

const echo = { delaySamples: 900, gain: 0.2 };
const wires: Wires = {
  FL: { delaySamples: 420, gain: 0.5, echo },
  FR: { delaySamples: 350, gain: 0.4, echo },
  'Sub 1': { delaySamples: 400, gain: 0.5 },
};
const schedule = scheduleTake(layoutNamed('2.1'), { sweepSeconds: 0.5, averages: 2 });
const samples = hearWires(schedule, wires);
const options = { calibration: null, inForce: null };
/** Of a response's spectrum: 2^17 points. */
const binHz = 48_000 / 2 ** 17;

const calibration = {
  name: 'microphone.txt',
  hz: [20, 100, 1000, 10_000, 20_000],
  db: [-6, 0, 0, 2, 5],
  phaseDegrees: null,
};
const inForce: SettingsInForce = {
  distanceMetres: { FL: 3, FR: 2.5, 'Sub 1': 3 },
  trimDb: { FR: -2 },
  crossoverHz: { fronts: 60, subs: null },
  equaliser: 'off',
  filters: usualFilters,
};

function responseOf(heard: Float32Array, label: ChannelLabel, more = {}, take = schedule) {
  const capture = { samples: heard, sampleRate: take.sampleRate };
  const response = responseOfTake(take, capture, label, { ...options, ...more });
  if (isTrouble(response)) throw new RangeError(response.sentence);
  return response;
}

/** The response and its noise at 1/24 octave must be the reading's, apart from its zero. */
async function expectSame(
  heard: Float32Array,
  label: ChannelLabel,
  more: { readonly calibration?: typeof calibration; readonly inForce?: SettingsInForce } = {},
  take: Schedule = schedule,
): Promise<void> {
  const read = readingOf(await readWires(take, heard, more), label).curves?.response;
  if (!read) return expect.fail(`${label} has no response`);
  const curve = responseCurve(responseOf(heard, label, more, take), read.hz, '1/24');
  const zero = label.startsWith('Sub') ? [40, 80] : [500, 2000];
  const inZero = read.hz.map((hz) => hz >= (zero[0] ?? 0) && hz <= (zero[1] ?? 0));
  const db = Array.from(curve.power, powerToDb);
  const told = db.filter((_, k) => inZero[k]);
  const reference = told.reduce((sum, value) => sum + value, 0) / told.length;
  expectClose(
    db.map((value) => value - reference),
    read.db,
    0.01,
  );
  if (!curve.noisePower) return expect.fail(`${label} has no noise`);
  const noiseDb = Array.from(curve.noisePower, (power) =>
    Math.max(-120, powerToDb(power) - reference),
  );
  expectClose(noiseDb, read.noiseDb, 0.01);
}

describe('responseOfTake', () => {
  it.each(['FL', 'FR', 'Sub 1'] as const)('is what the reading of %s shows', async (label) => {
    await expectSame(samples, label);
  });

  it('is so without the microphone, and with a crossover in force divided out', async () => {
    await expectSame(samples, 'FL', { calibration });
    await expectSame(samples, 'FR', { calibration, inForce });
  });

  it('is so when one of the sweeps was clipped and left out', async () => {
    const second = schedule.segments.filter(({ channel }) => channel === 'FR')[1];
    const clipped = samples.slice();
    for (let n = second?.sweepStart ?? 0; n < (second?.end ?? 0); n++) {
      clipped[n] = Math.min(Math.max(clipped[n] ?? 0, -0.06), 0.06);
    }
    const { notes, faults } = responseOf(clipped, 'FR');
    expect(notes.join(' ')).toMatch(/Sweep 2 of 2 left out: Clipped .* Read from 1 of 2 sweeps/);
    expect(faults).toHaveLength(0);
    await expectSame(clipped, 'FR');
  });

  it('holds the wire and its echo, and their arrival', () => {
    const [left, right] = [responseOf(samples, 'FL'), responseOf(samples, 'FR')];
    expect(right.channel).toBe('FR');
    const [its, own] = [left.arrival?.seconds ?? NaN, right.arrival?.seconds ?? NaN];
    expectClose(own - its, -70 / 48_000, 2e-6);
    expectClose(right.arrival?.index, right.ir.zeroIndex + own * right.ir.sampleRate, 1e-6);
    // |1 + g e^(−iωd)| at the bins: 550 samples later, half as strong, in a wire of 0.4, below the
    // take's peak.
    const hz = [1000, 1043.6, 5000].map((f) => Math.round(f / binHz) * binHz);
    const { db } = levelCurve(responseCurve(right, hz, 'none'));
    const expected = hz.map((f) => {
      const turn = (2 * Math.PI * f * 550) / 48_000;
      return schedule.peakDb + 10 * Math.log10(0.4 ** 2 * (1.25 + Math.cos(turn)));
    });
    expectClose(db, expected, 0.05, 'a short sweep leaves some ripple in its band');
  });

  it('keeps what is in force beside the response', () => {
    const { inForce: taken } = responseOf(samples, 'FR', { inForce });
    expect(taken.trimDb).toBe(-2);
    expectClose(taken.delay?.seconds, 0.5 / 343, 1e-9);
    expect(taken.filter?.spec.cutoffHz).toBe(60);
    expect(responseOf(samples, 'FR').inForce.filter).toBeNull();
  });

  it('refuses a silent channel, another take and silence, with a sentence', () => {
    const capture = (heard: Float32Array) => ({ samples: heard, sampleRate: 48_000 });
    const mute = hearWires(schedule, { ...wires, FR: { delaySamples: 350, gain: 0 } });
    const silent = responseOfTake(schedule, capture(mute), 'FR', options);
    if (!isTrouble(silent)) return expect.fail('was read');
    expect(silent.trouble).toBe('silence');
    expect(silent.sentence).toMatch(/^No response of FR: front right stays silent/);
    const other = scheduleTake(layoutNamed('3.1'), { sweepSeconds: 0.7 });
    const wrong = responseOfTake(other, capture(hearWires(schedule, wires)), 'FC', options);
    expect(isTrouble(wrong)).toBe(true);
    const nothing = responseOfTake(
      schedule,
      capture(new Float32Array(samples.length)),
      'FL',
      options,
    );
    expect(isTrouble(nothing) && nothing.trouble).toBe('silence');
  });

  it('throws for a channel the take does not play', () => {
    expect(() => responseOf(samples, 'FC')).toThrow(/must play FC, it plays FL, FR, Sub 1/);
  });
});
