import { expect, it } from 'vitest';
import '../../../../components/theme/base.css';
import '../../../../components/probe/take/take-facts';
import { inventedReadings, layout524 } from '../../fixtures';
import { findAll, mount, textOf } from '../../mount';

it('keeps names and numbers of a take in their boxes, with a long negative skew too', async () => {
  const readings = inventedReadings(layout524);
  const clock = {
    ...readings.clock,
    skewPpm: -22.1025,
    skewInterval: [-22.1039, -22.1011] as const,
    faults: [],
  };
  for (const width of [270, 286, 320, 400, 740]) {
    const facts = await mount('ll-take-facts', { readings: { ...readings, clock } }, width);
    for (const box of findAll<HTMLElement>(facts, 'dt, dd')) {
      expect(box.scrollWidth, `${box.textContent} at ${width} px`).toBeLessThanOrEqual(
        box.clientWidth,
      );
      expect(box.getBoundingClientRect().right).toBeLessThanOrEqual(
        facts.getBoundingClientRect().right + 0.5,
      );
    }
  }
});

it('says where the microphone stood, and from how many takes the readings were joined', async () => {
  const readings = inventedReadings(layout524);
  const facts = await mount('ll-take-facts', { readings, position: 'Seat 2', takes: 3 }, 320);
  expect(textOf(facts)).toMatch(/Position Seat 2 Joined from 3 takes/);
  const one = await mount('ll-take-facts', { readings, position: 'Seat 2', takes: 1 }, 320);
  expect(textOf(one)).not.toContain('Joined');
});
