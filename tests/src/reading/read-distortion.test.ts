import { describe, expect, it } from 'vitest';
import { markBand } from '../../../dsp/timing/mark-band';
import { distortDrive } from '../../../dsp/room/cone-distortion';
import { impulseResponseAt } from '../../../dsp/room/impulse-response-at';
import { powerSpectrum } from '../../../dsp/response/power-spectrum';
import { readDrives } from '../../../src/reading/lowest-frequency';
import { readOne, type FramedTake, type UnframedTake } from '../../../src/reading/read-one';
import type { ReadingHelper } from '../../../src/reading/read-together';
import type { ChannelReading, DistortionReading } from '../../../src/reading/reading';
import { renderCapture } from '../../../src/rig/practice-capture';
import { practiceSystem } from '../../../src/rig/practice-system';
import type { Channel } from '../../../src/system/channel';
import { planTake } from '../../../src/take/plan-take';
import { scheduleTake } from '../../../src/take/schedule-take';
import { isTrouble } from '../../../src/trouble';
import { hearWires, layoutNamed, readWires, readingOf } from './wired-room';

const layout = layoutNamed('2.1');
const schedule = scheduleTake(layout, { sweepSeconds: 2 ** 17 / 48_000, peakDb: -6 });
const system = { ...practiceSystem(layout, 3), noise: { pink: 1e-5, hiss: 2e-6 } };

const captures = new Map<number, Float32Array>();

async function take(gainDb: number, helpers: readonly ReadingHelper[] = []) {
  const samples = captures.get(gainDb) ?? (await renderCapture(system, schedule, { gainDb }));
  if (!samples) throw new RangeError('the rendering must run to its end');
  captures.set(gainDb, samples);
  return readWires(schedule, samples, { helpers });
}

function curvesOf({ distortion }: ChannelReading): Extract<DistortionReading, { kind: 'curves' }> {
  if (distortion?.kind !== 'curves') throw new RangeError(distortion?.sentence ?? 'none');
  return distortion;
}

function channelNamed(label: string): Channel {
  const channel = layout.channels.find((one) => one.label === label);
  if (!channel) throw new RangeError(`${label} is not in the layout`);
  return channel;
}

/** Works on copies, as a worker does. */
function copyingHelper(): ReadingHelper {
  let begun: UnframedTake | null = null;
  let framed: FramedTake | null = null;
  return {
    begin: (given) => (begun = structuredClone(given)),
    band: ({ samples, sampleRate, mark }) => Promise.resolve(markBand(samples, sampleRate, mark)),
    setFrame: (frame) => (framed = begun && { ...begun, frame: structuredClone(frame) }),
    async read(label, piece) {
      await Promise.resolve();
      if (!framed) throw new RangeError('no take');
      return readOne(framed, channelNamed(label), structuredClone(piece));
    },
  };
}

/** Level of harmonic k of steady sines re the fundamental, dB, in 1/6 octave at the microphone. */
function steppedSines(label: string, peak: number): (hz: number, order: number) => number {
  const speaker = system.speakers.find(({ channel }) => channel === label)?.speaker;
  if (!speaker?.cone) throw new RangeError(`${label} must distort`);
  const { cone } = speaker;
  const rate = 4800;
  const room = impulseResponseAt(system.room, speaker, system.microphone, rate, 1.3);
  const path = powerSpectrum({ samples: room, sampleRate: rate, zeroIndex: 0 }, 0.25);
  const levels = (hz: number, order: number): number => {
    const drive = Float64Array.from(
      { length: 2 * rate },
      (_, n) => peak * Math.sin((2 * Math.PI * hz * n) / rate),
    );
    const steady = distortDrive(drive, rate, cone).subarray(rate);
    let [re, im] = [0, 0];
    for (const [n, value] of steady.entries()) {
      re += value * Math.cos((2 * Math.PI * order * hz * n) / rate);
      im += value * Math.sin((2 * Math.PI * order * hz * n) / rate);
    }
    return re * re + im * im;
  };
  const power = (centre: number, order: number): number => {
    let sum = 0;
    let count = 0;
    const reach = 2 ** (1 / 12);
    for (let k = Math.ceil((order * centre) / reach / path.hzPerBin); ; k++) {
      const hz = k * path.hzPerBin;
      if (hz > order * centre * reach) return sum / count;
      sum += path.power[k] ?? 0;
      count++;
    }
  };
  // The cone itself changes little within a band; whole periods of its middle are taken.
  return (hz, order) => {
    const whole = Math.round(hz);
    const own = levels(whole, order) / levels(whole, 1);
    return 10 * Math.log10((own * power(hz, order)) / power(hz, 1));
  };
}

describe('distortion of a take in a practice room', () => {
  it('is what sines stepped through the bass would give', async () => {
    const readings = await take(0);
    const all: number[] = [];
    for (const label of ['FL', 'Sub 1'] as const) {
      const reading = readingOf(readings, label);
      expect(reading.faults).toEqual([]);
      const { hz, harmonics } = curvesOf(reading);
      const truth = steppedSines(label, 10 ** (-6 / 20));
      for (const { order, db } of harmonics.slice(0, 2)) {
        for (const [i, level] of db.entries()) {
          const f = hz[i] ?? 0;
          if (level === null || f < 22 || f > 70) continue;
          all.push(Math.abs(level - truth(f, order)));
        }
      }
    }
    all.sort((a, b) => a - b);
    expect(all.length).toBeGreaterThan(20);
    expect(all[all.length >> 1] ?? 9).toBeLessThan(1);
    expect(all[Math.floor(0.9 * all.length)] ?? 9).toBeLessThan(3);
  });

  it('is the same when a helper reads it from its piece of the capture', async () => {
    const alone = curvesOf(readingOf(await take(0), 'Sub 1'));
    const together = curvesOf(readingOf(await take(0, [copyingHelper()]), 'Sub 1'));
    for (const [i, db] of alone.total.db.entries()) {
      if (db !== null) expect(Math.abs((together.total.db[i] ?? 99) - db)).toBeLessThan(0.02);
    }
  });

  it('rises with the drive, and says how low a speaker may be asked to play', async () => {
    const driven = await Promise.all(
      [0, 6].map(async (driveDb) => ({
        driveDb,
        distortion: curvesOf(readingOf(await take(driveDb), 'FL')),
      })),
    );
    const { lowest, levels, notes } = readDrives(channelNamed('FL'), driven);
    expect(notes).toEqual([]);
    expect(levels.map(({ driveDb }) => driveDb)).toEqual([0, 6]);
    const at = (driveDb: number, percent: number): number => {
      const one = lowest.find((it) => it.driveDb === driveDb && it.percent === percent)?.found;
      return one?.kind === 'told' || one?.kind === 'not reached' ? one.hz : Number.NaN;
    };
    expect(at(6, 5)).toBeGreaterThan(at(6, 10));
    expect(at(6, 5)).toBeGreaterThan(1.15 * at(0, 5));
    const told = lowest.find(({ found, driveDb }) => found.kind === 'told' && driveDb === 6);
    expect(told?.sentence).toMatch(
      /^Front left at 6 dB: down to \d+ Hz \(\d+ to \d+\); below, (distortion passes \d+ %|more than 1 dB is lost)\.$/,
    );
  });
});

describe('distortion that cannot be told', () => {
  it('of wires is none: what noise hides is never shown', async () => {
    const readings = await readWires(schedule, hearWires(schedule, {}, { rms: 3e-3, seed: 5 }));
    for (const reading of readings.channels) {
      const { total, harmonics } = curvesOf(reading);
      for (const { db, limitedBy } of [total, ...harmonics]) {
        expect(db.filter((one) => one !== null)).toEqual([]);
        expect(limitedBy).not.toContain(null);
      }
    }
  });

  it.each([
    ['a short sweep', { sweepSeconds: 1 }, 'Use sweeps of 2 s or more.'],
    ['overlapping sweeps', { overlap: true }, 'Take it with sweeps one after the other.'],
  ])('names what would settle it: %s', async (_, change, action) => {
    const settings = { sweepSeconds: 2, averages: 1, pauseSeconds: 0, overlap: false, repeats: 0 };
    const stereo = layoutNamed('3.1');
    const planned = planTake(stereo, { ...settings, ...change }, null, { decaySeconds: 0.3 });
    if (isTrouble(planned)) throw new RangeError(planned.sentence);
    const [part] = planned.parts;
    if (!part) throw new RangeError('the plan must hold a take');
    const readings = await readWires(part.schedule, hearWires(part.schedule, {}));
    const { distortion } = readingOf(readings, 'FL');
    if (distortion?.kind !== 'cannot tell') throw new RangeError('must not be told');
    expect(distortion.sentence).toMatch(/^No distortion: /);
    expect(distortion.sentence.endsWith(action)).toBe(true);
    const drives = readDrives(channelNamed('FL'), [{ driveDb: -3, distortion }]);
    expect(drives.lowest).toEqual([]);
    expect(drives.notes).toEqual([`At −3 dB: ${distortion.sentence}`]);
  });

  it('needs a second level for compression', async () => {
    const readings = await readWires(schedule, hearWires(schedule, {}));
    const distortion = curvesOf(readingOf(readings, 'FL'));
    const { notes, lowest } = readDrives(channelNamed('FL'), [{ driveDb: 0, distortion }]);
    expect(notes).toEqual([
      'Compression cannot be told from one level. Take the same position 6 dB louder.',
    ]);
    expect(lowest).toHaveLength(3);
  });
});
