import { describe, expect, it } from 'vitest';
import { practiceTruth } from '../../../src/rig/practice-truth';
import { layoutChoices, layoutFromName } from '../../../src/system/layout';
import { isTrouble } from '../../../src/trouble';
import { expectClose } from '../../close';

function truthOf(name: string, seed: number) {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) throw new RangeError(layout.sentence);
  return practiceTruth(layout, seed);
}

describe('the truth of the practice room', () => {
  it('stands FL at 2.40 m in 20 °C, whatever the seed', () => {
    for (let seed = 0; seed < 30; seed++) {
      const { reference, referenceDistanceMetres, temperatureCelsius } = truthOf('5.2.4', seed);
      expect(reference).toBe('FL');
      expectClose(referenceDistanceMetres, 2.4, 1e-9);
      expect(temperatureCelsius).toBe(20);
    }
  });

  it('has every layout', () => {
    for (const bed of layoutChoices.beds) {
      for (const heights of layoutChoices.heights) {
        const { channels } = truthOf(`${bed}.2.${heights}`, 7);
        expect(channels).toHaveLength(bed + 2 + heights);
        for (const { tapeMetres, f3Hz, f6Hz, f10Hz } of channels) {
          expect(tapeMetres).toBeGreaterThan(0.8);
          expect(tapeMetres).toBeLessThan(4.5);
          expect(f10Hz < f6Hz && f6Hz < f3Hz && f10Hz > 8 && f3Hz < 200).toBe(true);
        }
      }
    }
  });

  it('counts arrival from the reference, at 343.2 m/s', () => {
    const { channels } = truthOf('5.1', 12);
    for (const { arrivalSeconds, distanceMetres } of channels) {
      expectClose(2.4 + 343.2 * arrivalSeconds, distanceMetres, 1e-9);
    }
  });

  it('gives subs a delay of their own and other speakers none', () => {
    for (const { channel, tapeMetres, distanceMetres } of truthOf('5.2.4', 5).channels) {
      if (channel.startsWith('Sub')) expect(distanceMetres).toBeGreaterThan(tapeMetres + 0.5);
      else expect(distanceMetres).toBe(tapeMetres);
    }
  });

  it('inverts one speaker on odd seeds, never the reference or a sub, and none on even seeds', () => {
    for (let seed = 0; seed < 20; seed++) {
      const inverted = truthOf('5.2.4', seed).channels.filter((channel) => channel.inverted);
      expect(inverted).toHaveLength(seed % 2);
      for (const { channel } of inverted) expect(channel).not.toMatch(/^(FL|Sub .)$/);
    }
  });

  it('bounces the front heights in some rooms, by a longer way', () => {
    let bounced = 0;
    for (let seed = 0; seed < 20; seed++) {
      for (const { ceilingPathMetres, tapeMetres, channel } of truthOf('5.1.2', seed).channels) {
        if (ceilingPathMetres === null) continue;
        bounced++;
        expect(channel).toMatch(/^TpF/);
        expect(ceilingPathMetres).toBeGreaterThan(tapeMetres + 0.2);
      }
    }
    expect(bounced).toBeGreaterThan(4);
    expect(bounced).toBeLessThan(30);
  });

  it('makes pairs of one model, a little apart', () => {
    const { channels } = truthOf('5.1', 8);
    const [left, right] = channels;
    const ratio = (left?.f3Hz ?? 0) / (right?.f3Hz ?? 1);
    expect(ratio).not.toBe(1);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.08);
  });

  it('runs its clock off by tens of ppm, either way', () => {
    const skews = Array.from({ length: 20 }, (_, seed) => truthOf('2.0', seed).skewPpm);
    expect(Math.min(...skews.map(Math.abs))).toBeGreaterThan(10);
    expect(Math.max(...skews.map(Math.abs))).toBeLessThan(120);
    expect(skews.some((skew) => skew < 0) && skews.some((skew) => skew > 0)).toBe(true);
  });
});
