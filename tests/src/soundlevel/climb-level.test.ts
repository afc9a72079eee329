import { describe, expect, it } from 'vitest';
import { climbLevel, type ClimbOptions } from '../../../src/soundlevel/climb-level';
import type { ClimbRequest, ClimbResult, ClimbState } from '../../../src/soundlevel/sound-level';
import { isTrouble, trouble, type Trouble } from '../../../src/trouble';
import { expectClose } from '../../close';
import { fakeRig, type Chain, type FakeRig } from './fake-rig';

const calibration = {
  offsetDb: 120,
  how: 'calibrator',
  at: '2026-01-01T00:00:00Z',
  microphone: 'invented',
} as const;

interface Climbed {
  readonly rig: FakeRig;
  readonly outcome: ClimbResult | Trouble;
  readonly states: readonly ClimbState[];
  readonly heard: readonly (readonly [number, number])[];
}

async function climb(
  chain: Chain,
  request: Partial<ClimbRequest> = {},
  options: Partial<ClimbOptions> = {},
): Promise<Climbed> {
  const rig = fakeRig(chain);
  const states: ClimbState[] = [];
  const heard: [number, number][] = [];
  const outcome = await climbLevel(
    rig,
    { marginDb: 25, targetDb: null, capDb: -6, ...request },
    {
      signal: new AbortController().signal,
      channel: 'FL',
      isSub: false,
      routes: {},
      soundLevel: null,
      onState: (state) => states.push(state),
      onLevel: (db, seconds) => heard.push([db, seconds]),
      ...options,
    },
  );
  return { rig, outcome, states, heard };
}

function resultOf({ outcome }: Climbed): ClimbResult {
  if (isTrouble(outcome)) throw new Error(outcome.sentence);
  return outcome;
}

function steps({ rig }: Climbed): number[] {
  return rig.gains.slice(1).map(({ gainDb }, i) => gainDb - (rig.gains[i]?.gainDb ?? 0));
}

describe('climbLevel', () => {
  it('climbs from −60 dB in steps of 6 dB or less to the margin asked for, and says so', async () => {
    const climbed = await climb({ gainDb: -15, noiseDb: -70 });
    const { end, marginDb, sentence, linearity } = resultOf(climbed);
    expect(end).toBe('margin');
    expectClose(marginDb, 25, 0.5);
    expect(sentence).toMatch(
      /^The noise margin is met: at −\d+\.\d dB FL stands 2[45]\.\d dB over/,
    );
    expect(linearity?.passes).toBe(true);
    expectClose(linearity?.stepDb, 6, 0.1);
    expect(climbed.rig.gains[0]?.gainDb).toBe(-60);
    expect(Math.max(...steps(climbed))).toBeLessThanOrEqual(6 + 1e-9);
    expect(climbed.rig.isOpen).toBe(false);
  });

  it('finds the same gain however late the sound comes', async () => {
    const chain = { gainDb: -20, noiseDb: -70 };
    const soon = resultOf(await climb({ ...chain, delaySeconds: 0.01 }));
    const late = resultOf(await climb({ ...chain, delaySeconds: 1.9 }));
    expectClose(late.gainDb, soon.gainDb, 0.3);
    expect(late.linearity?.passes).toBe(true);
  });

  it('listens to the silence first and begins where it is told', async () => {
    const { rig } = await climb({ gainDb: -15 }, {}, { startDb: -40 });
    expect(rig.gains[0]?.gainDb).toBe(-40);
    expect(rig.gains[0]?.seconds).toBeGreaterThan(2);
  });

  it('stops at the sound level asked for when that comes first, and says so', async () => {
    const { end, sentence, gainDb } = resultOf(
      await climb({ gainDb: -10, noiseDb: -75 }, { targetDb: 60 }, { soundLevel: calibration }),
    );
    expect(end).toBe('target');
    expect(sentence).toMatch(
      /^The sound level is met: .*(59\.\d|60\.\d) dB\(C\); 60\.0 dB\(C\) were/,
    );
    // −15 dB rms at gain 0, −10 dB on the way, 120 dB of offset; C takes 0.9 dB off the top.
    expectClose(gainDb, 60 - 120 + 10 + 15, 1.5);
  });

  it('knows no sound level without a calibration', async () => {
    const { end } = resultOf(await climb({ gainDb: -10, noiseDb: -75 }, { targetDb: 40 }));
    expect(end).toBe('margin');
  });

  it('stops at the cap, never above it', async () => {
    const climbed = await climb({ gainDb: -45, noiseDb: -75 }, { capDb: -12 });
    const { end, gainDb, sentence } = resultOf(climbed);
    expect([end, gainDb]).toEqual(['cap', -12]);
    expect(sentence).toMatch(/highest gain allowed: at −12\.0 dB/);
    expect(Math.max(...climbed.rig.gains.map((g) => g.gainDb))).toBe(-12);
  });

  it('begins at the cap when that lies below the start', async () => {
    const climbed = await climb({ gainDb: 40 }, { capDb: -70 });
    expect(climbed.rig.gains.every(({ gainDb }) => gainDb <= -70)).toBe(true);
  });

  it('tells a dead speaker from a quiet one, names what to check and goes back', async () => {
    const { end, gainDb, sentence, linearity } = resultOf(await climb({ gainDb: -Infinity }));
    expect([end, gainDb, linearity]).toEqual(['unheard', -60, null]);
    expect(sentence).toMatch(/not heard.*amplifier.*output.*microphone/s);
  });

  it('does not take hum or a passing truck for the speaker', async () => {
    const truck = (seconds: number): number =>
      seconds > 8 ? 0.03 * Math.sin(5000 * Math.sin(237 * seconds * seconds)) : 0;
    const { end } = resultOf(await climb({ gainDb: -Infinity, extra: truck }));
    expect(end).toBe('unheard');
  });

  it('keeps the peaks of a hot microphone below −12 dB re full scale', async () => {
    const { end, sentence } = resultOf(await climb({ gainDb: 40, noiseDb: -30 }));
    expect(end).toBe('clipping');
    expect(sentence).toMatch(/peaks reach −1[2-4]\.\d dB/);
  });

  it('comes down at once when the microphone clips', async () => {
    const climbed = await climb({ gainDb: 50, noiseDb: -30 }, {}, { startDb: -30 });
    const { end, gainDb } = resultOf(climbed);
    expect(end).toBe('clipping');
    // Noise of −15 dB rms with peaks near −4 dB, 50 dB on the way: −12 dB is reached near −58.
    expect(gainDb).toBeLessThan(-54);
    expect(climbed.rig.gains[1]?.gainDb).toBeLessThanOrEqual(-42);
    expect(
      (climbed.rig.gains[1]?.seconds ?? 99) - (climbed.rig.gains[0]?.seconds ?? 0),
    ).toBeLessThan(1);
  });

  it('goes on after a single bang', async () => {
    const bang = (seconds: number): number => (Math.abs(seconds - 9) < 0.01 ? 3 : 0);
    const { end } = resultOf(await climb({ gainDb: -15, noiseDb: -75, extra: bang }));
    expect(end).toBe('margin');
  });

  it('does not take a door that slams in the silence for the noise floor', async () => {
    const slam = (s: number): number =>
      s > 2.6 && s < 2.9 ? 0.3 * Math.exp(-(s - 2.6) * 30) * Math.sin(6000 * s) : 0;
    const quiet = resultOf(await climb({ gainDb: -15, noiseDb: -75 }));
    const slammed = resultOf(await climb({ gainDb: -15, noiseDb: -75, extra: slam }));
    expectClose(slammed.gainDb, quiet.gainDb, 0.6);
  });

  it('refuses a microphone that clips by itself', async () => {
    const { outcome } = await climb({ extra: (seconds) => 3 * Math.sin(2000 * seconds) });
    expect(outcome).toMatchObject({ trouble: 'too-loud' });
  });

  it('never passes 95 dB(C)', async () => {
    const climbed = await climb(
      { gainDb: 0, noiseDb: -45 },
      { marginDb: 60 },
      { soundLevel: { ...calibration, offsetDb: 130 } },
    );
    const { end, sentence } = resultOf(climbed);
    expect(end).toBe('too loud');
    expect(sentence).toMatch(/95 dB\(C\)/);
    const loudest = Math.max(...climbed.states.map((state) => state.soundLevel?.db ?? 0));
    expect(loudest).toBeLessThan(95.1);
    expect(loudest).toBeGreaterThan(94);
  });

  it('comes down when the first step is already too loud', async () => {
    const climbed = await climb(
      { gainDb: 0, noiseDb: -70 },
      { marginDb: 90, targetDb: 120 },
      { soundLevel: { ...calibration, offsetDb: 130 }, startDb: -10 },
    );
    const { end, gainDb } = resultOf(climbed);
    expect(end).toBe('too loud');
    expect(gainDb).toBeLessThan(-19);
  });

  it('stops when gain control hides the steps', async () => {
    let energy = 0;
    const control = (x: number): number => {
      energy += (x * x - energy) / 20_000;
      return x * Math.min(30, (0.01 / Math.sqrt(energy + 1e-9)) ** 0.7);
    };
    const { outcome, rig } = await climb({ gainDb: -10, noiseDb: -75, process: control });
    expect(outcome).toMatchObject({ trouble: 'not-linear' });
    expect(Math.max(...rig.gains.map(({ gainDb }) => gainDb))).toBeLessThan(-20);
  });

  it('finds a compressor in the last step by the linearity check', async () => {
    const compress = (x: number): number => Math.sign(x) * Math.abs(x) ** 0.9;
    const { linearity, sentence } = resultOf(
      await climb({ gainDb: -10, noiseDb: -80, process: compress }),
    );
    expect(linearity?.passes).toBe(false);
    expectClose(linearity?.stepDb, 5.4, 0.1);
    expect(sentence).toMatch(/came back as 5\.[345] dB less.*Switch off/);
  });

  it('cannot tell linearity with a thin margin, and says so', async () => {
    const { linearity, sentence } = resultOf(
      await climb({ gainDb: -20, noiseDb: -60 }, { marginDb: 10 }),
    );
    expect(linearity).toBeNull();
    expect(sentence).toMatch(/too thin to tell/);
  });

  it('climbs on a sub in its own band', async () => {
    const { end, sentence } = resultOf(
      await climb({ gainDb: -15, noiseDb: -50 }, {}, { isSub: true, channel: 'Sub 1' }),
    );
    expect(end).toBe('margin');
    expect(sentence).toMatch(/from 30 to 80 Hz/);
  });

  it.each([44_100, 96_000])('runs at %d Hz', async (sampleRate) => {
    const { end } = resultOf(await climb({ gainDb: -10, noiseDb: -75, sampleRate }));
    expect(end).toBe('margin');
  });

  it('outlives lost audio', async () => {
    const { end } = resultOf(
      await climb({ gainDb: -15, noiseDb: -75, lost: { atSeconds: 9, frames: 480 } }),
    );
    expect(end).toBe('margin');
  });

  it('gives the trouble of a line that ends or does not open', async () => {
    const gone = await climb({ endAtSeconds: 6 });
    expect(gone.outcome).toMatchObject({ trouble: 'device-gone' });
    const refuse = trouble('no-microphone', 'There is no microphone.');
    expect((await climb({ refuse })).outcome).toEqual(refuse);
  });

  it('stops at once when aborted, and closes the line', async () => {
    const stop = new AbortController();
    const climbed = await climb(
      { gainDb: -15 },
      {},
      {
        signal: stop.signal,
        onState: ({ gainDb }) => {
          if (gainDb > -55) stop.abort();
        },
      },
    );
    expect(climbed.outcome).toMatchObject({ trouble: 'stopped' });
    expect(climbed.rig.isOpen).toBe(false);
    expect(climbed.rig.gains.at(-1)?.gainDb).toBe(-54);
  });

  it('refuses numbers that are none', async () => {
    expect((await climb({}, { capDb: 3 })).outcome).toMatchObject({ trouble: 'bad-number' });
    expect((await climb({}, { marginDb: Number.NaN })).outcome).toMatchObject({
      trouble: 'bad-number',
    });
  });

  it('tells how far it is, what it hears and for how long', async () => {
    const { states, heard, rig } = await climb({ gainDb: -15, noiseDb: -75 });
    expect(states.every(({ progress }) => progress >= 0 && progress <= 1)).toBe(true);
    expect(states.every(({ secondsLeft }) => secondsLeft > 0 && secondsLeft < 60)).toBe(true);
    expect(states.at(-1)?.soundLevel).toMatchObject({ weighting: 'C', time: 'slow' });
    expect(heard.every(([db]) => Number.isFinite(db))).toBe(true);
    const seconds = heard.reduce((sum, [, part]) => sum + part, 0);
    expectClose(seconds, rig.seconds, 0.3);
  });
});
