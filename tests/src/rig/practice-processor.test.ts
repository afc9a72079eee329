import { describe, expect, it } from 'vitest';
import { practiceFilter } from '../../../src/rig/practice-filter';
import { dynamicsGain, processedResponses } from '../../../src/rig/practice-processor';
import { channelResponse } from '../../../src/rig/practice-response';
import { slipInTyping } from '../../../src/rig/practice-slips';
import { practiceSystem } from '../../../src/rig/practice-system';
import { practiceWays } from '../../../src/rig/practice-ways';
import { factorySettings, type ProcessorSettings } from '../../../src/system/processor-settings';
import { layoutOf } from '../../components/fake-bench';

const typed: ProcessorSettings = {
  ...factorySettings,
  distanceMetres: { FL: 2.4, FR: 3.43, 'Sub 1': 2.4 },
  trimDb: { FL: -6, 'Sub 1': 2 },
  crossoverHz: { fronts: 80 },
};
const layout = layoutOf('2.1');
const labels = layout.channels.map(({ label }) => label);

describe('the filters of the simulated processor', () => {
  it.each([1, 2, 3, 4])('have the magnitude of a Butterworth of order %i', (order) => {
    for (const hz of [20, 80, 100, 500]) {
      const low = practiceFilter({ family: 'Butterworth', order, kind: 'low-pass', hz: 80 }, hz);
      const high = practiceFilter({ family: 'Butterworth', order, kind: 'high-pass', hz: 80 }, hz);
      const w = (hz / 80) ** (2 * order);
      expect(low[0] ** 2 + low[1] ** 2).toBeCloseTo(1 / (1 + w), 12);
      expect(high[0] ** 2 + high[1] ** 2).toBeCloseTo(w / (1 + w), 12);
    }
  });

  it('turn by 45° an order at the cutoff, a low-pass behind, a high-pass ahead', () => {
    const at = (kind: 'low-pass' | 'high-pass'): number => {
      const [re, im] = practiceFilter({ family: 'Butterworth', order: 2, kind, hz: 80 }, 80);
      return (180 / Math.PI) * Math.atan2(im, re);
    };
    expect(at('low-pass')).toBeCloseTo(-90, 9);
    expect(at('high-pass')).toBeCloseTo(90, 9);
  });

  it('sum flat in level as Linkwitz-Riley of order 4', () => {
    for (const hz of [30, 80, 200]) {
      const of = (kind: 'low-pass' | 'high-pass') =>
        practiceFilter({ family: 'Linkwitz-Riley', order: 4, kind, hz: 80 }, hz);
      const [low, high] = [of('low-pass'), of('high-pass')];
      expect(Math.hypot(low[0] + high[0], low[1] + high[1])).toBeCloseTo(1, 12);
    }
  });
});

describe('the ways through the simulated processor', () => {
  it('delay against the farthest, trim, and send bass to the subs', () => {
    const [own, sub] = practiceWays({ typed, slips: [] }, labels, 'FL');
    expect(own).toMatchObject({ output: 'FL', gainDb: -6, inverted: false });
    expect(own?.delaySeconds).toBeCloseTo(1.03 / 343, 9);
    expect(own?.filters).toMatchObject([{ kind: 'high-pass', hz: 80, order: 2 }]);
    expect(sub).toMatchObject({ output: 'Sub 1', gainDb: 2 });
    expect(sub?.filters).toMatchObject([{ kind: 'low-pass', hz: 80, order: 4 }]);
  });

  it('play LFE on a sub 10 dB louder, low-passed at 120 Hz', () => {
    const ways = practiceWays({ typed, slips: [] }, labels, 'Sub 1');
    expect(ways).toMatchObject([
      { output: 'Sub 1', gainDb: 12, filters: [{ kind: 'low-pass', hz: 120 }] },
    ]);
  });

  it('leave a full-range group alone', () => {
    const ways = practiceWays(
      { typed, slips: [{ kind: 'full range', group: 'fronts' }] },
      labels,
      'FR',
    );
    expect(ways).toMatchObject([{ output: 'FR', filters: [] }]);
  });
});

describe('what the microphone hears through the simulated processor', () => {
  it('is the speaker, later and quieter by what was typed', () => {
    const system = practiceSystem(layout, 4);
    const open = { ...typed, crossoverHz: { fronts: null } };
    const hear = processedResponses(system, { typed: open, slips: [] }, {}, 4800);
    const plain = channelResponse(system, 'FL', {}, 4800);
    const heard = hear('FL');
    const delay = Math.round((1.03 / 343) * 4800);
    const gain = 10 ** (-6 / 20);
    const most = Math.max(...(plain ?? []).map(Math.abs));
    let worst = 0;
    for (let n = 0; n < (plain?.length ?? 0); n++) {
      worst = Math.max(worst, Math.abs((heard?.[n + delay] ?? 9) - gain * (plain?.[n] ?? 0)));
    }
    // Neither 0 Hz nor half the rate passes.
    expect(worst).toBeLessThan(1e-3 * most);
  });

  it('is silence where nothing sounds', () => {
    const system = practiceSystem(layout, 4);
    const open = { ...typed, crossoverHz: { fronts: null } };
    const hear = processedResponses(system, { typed: open, slips: [] }, { silent: ['FR'] }, 4800);
    expect(hear('FR')).toBeNull();
  });
});

describe('slips in typing', () => {
  it('exchange sides, change units and signs, leave out, turn over, and nothing else', () => {
    const { distanceMetres, trimDb } = slipInTyping(typed, [
      { kind: 'wrong side', channels: ['FL'] },
      { kind: 'wrong sign', channels: ['FL'] },
    ]);
    expect(distanceMetres).toEqual({ FL: 3.43, FR: 2.4, 'Sub 1': 2.4 });
    expect(trimDb).toEqual({ FL: 6, 'Sub 1': 2 });
    const feet = slipInTyping(typed, [{ kind: 'wrong unit', taken: 'feet', channels: ['FL'] }]);
    expect(feet.distanceMetres.FL).toBeCloseTo(2.4 * 0.3048, 12);
    expect(feet.distanceMetres.FR).toBe(3.43);
    expect(slipInTyping(typed, [{ kind: 'inverted', channels: ['Sub 1'] }]).inverted).toEqual([
      'Sub 1',
    ]);
    expect(slipInTyping(typed, [{ kind: 'LFE level', offDb: -10 }]).lfe.gainDb).toBe(0);
    expect(slipInTyping(typed, [])).toBe(typed);
  });

  it('turn loud sounds down by a share of the excess', () => {
    const slips = [{ kind: 'dynamics', thresholdDb: -30, share: 0.5 }] as const;
    expect(dynamicsGain({ typed, slips }, -12)).toBeCloseTo(10 ** (-9 / 20), 12);
    expect(dynamicsGain({ typed, slips }, -42)).toBe(1);
    expect(dynamicsGain({ typed, slips: [] }, 0)).toBe(1);
  });
});
