import { describe, expect, it } from 'vitest';
import {
  frequencyScale,
  frequencyTicks,
  levelScale,
  levelTicks,
} from '../../../components/charts/frequency-axis';

describe('the frequency axis', () => {
  it('gives every octave the same width', () => {
    const x = frequencyScale('full', 0, 1000);
    expect(x(80) - x(40)).toBeCloseTo(x(8000) - x(4000), 9);
  });

  it('keeps its labels apart at any width, and drops the least wanted first', () => {
    for (const width of [280, 400, 700, 1100]) {
      for (const range of ['low', 'full'] as const) {
        const x = frequencyScale(range, 0, width);
        const ticks = frequencyTicks(range, x, 32);
        ticks.slice(1).forEach((tick, i) => {
          expect(tick.x - (ticks[i]?.x ?? 0)).toBeGreaterThanOrEqual(32);
        });
        expect(ticks.map(({ hz }) => hz)).toContain(100);
      }
    }
  });

  it('says thousands with a k', () => {
    const texts = frequencyTicks('full', frequencyScale('full', 0, 900), 30).map(
      ({ text }) => text,
    );
    expect(texts).toContain('1\u202fk');
    expect(texts).toContain('10\u202fk');
  });
});

describe('the level axis', () => {
  it('holds the loudest point and shows some of the noise', () => {
    const y = levelScale([[3, 8.2, -12]], [[-37, -38, -39]], 0, 400);
    expect(y.domain()).toEqual([-42, 12]);
  });

  it('has a sensible range when there is nothing to show', () => {
    expect(levelScale([], [], 0, 400).domain()).toEqual([-30, 6]);
    expect(levelScale([[NaN]], [[NaN]], 0, 400).domain()).toEqual([-30, 6]);
  });

  it('steps by 6 dB where there is room, by 12 where there is not', () => {
    expect(levelTicks(levelScale([], [], 0, 400))).toEqual([6, 0, -6, -12, -18, -24, -30]);
    expect(levelTicks(levelScale([], [], 0, 100))).toEqual([0, -12, -24]);
  });
});
