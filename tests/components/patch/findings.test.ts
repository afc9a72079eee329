import { describe, expect, it } from 'vitest';
import { wiringFindings, wiringTitle } from '../../../components/patch/findings';
import type { Readings } from '../../../src/reading/reading';
import { layoutOf } from '../fake-bench';
import { sampleReadings } from '../sample-readings';

const layout = layoutOf('5.1');
const readings = sampleReadings(layout);

function withSilent(label: string): Readings {
  const channels = readings.channels.map((one) =>
    one.channel === label
      ? { ...one, faults: [{ kind: 'silent' as const, sentence: 'Silent.' }] }
      : one,
  );
  return { ...readings, channels };
}

describe('what a take says about the wiring', () => {
  it('is nothing before there is one', () => {
    expect(wiringFindings(layout, null)).toEqual([]);
    expect(wiringTitle(layout, null)).toContain('connect 6');
  });

  it('finds the inverted speaker and says to switch its amplifier off first', () => {
    const findings = wiringFindings(layout, readings);
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatch(/^SiR is inverted: switch its amplifier off/);
  });

  it('finds the silent channel', () => {
    expect(wiringFindings(layout, withSilent('FC')).join(' ')).toContain('FC stayed silent');
    expect(wiringTitle(layout, withSilent('FC'))).toContain('2 plugs');
  });

  it('does not come from a take of another layout', () => {
    expect(wiringFindings(layoutOf('7.1'), readings)).toEqual([]);
  });
});
