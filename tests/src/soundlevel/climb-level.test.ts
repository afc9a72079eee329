import { describe, expect, it } from 'vitest';
import { expectClose } from '../../close';
import { calibration, climb, resultOf, steps } from './climb-on';

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
    const progress = states.map((state) => state.progress);
    expect(progress.at(-1)).toBeGreaterThan(0.9);
    expect(states.at(-1)?.soundLevel).toMatchObject({ weighting: 'C', time: 'slow' });
    expect(heard.every(([db]) => Number.isFinite(db))).toBe(true);
    const seconds = heard.reduce((sum, [, part]) => sum + part, 0);
    expectClose(seconds, rig.seconds, 0.3);
  });
});
