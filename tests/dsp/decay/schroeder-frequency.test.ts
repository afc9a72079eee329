import { expect, it } from 'vitest';
import { schroederFrequency } from '../../../dsp/decay/schroeder-frequency';
import { expectClose } from '../../close';

const between = (value: number, factor: number) => ({
  value,
  interval: [value / factor, value * factor] as const,
});

it('grows with the root of the decay time and so does its interval', () => {
  const { hz, interval } = schroederFrequency(between(0.4, 1.44), between(40, 1));
  expectClose(hz, 200, 1e-9);
  expectClose([...(interval ?? [])], [200 / 1.2, 200 * 1.2], 1e-9);
});

it('adds independent errors by squares', () => {
  const { interval } = schroederFrequency(between(0.4, Math.exp(0.3)), between(40, Math.exp(0.4)));
  expectClose([...(interval ?? [])], [200 * Math.exp(-0.25), 200 * Math.exp(0.25)], 1e-9);
});

it('takes the large end of the volume for its low end', () => {
  const volume = { value: 40, interval: [40, 40 * Math.exp(0.2)] } as const;
  const { interval } = schroederFrequency(between(0.4, 1), volume);
  expectClose([...(interval ?? [])], [200 * Math.exp(-0.1), 200], 1e-9);
});

it('says what is missing', () => {
  const noVolume = schroederFrequency(between(0.4, 1.1), null);
  expect(noVolume.hz).toBeNull();
  expect(noVolume.sentence).toContain('Type the room’s size on the plan.');
  expect(schroederFrequency(null, between(40, 1.1)).sentence).toContain('decay time');
});

it('refuses what is no decay time and no room', () => {
  expect(() => schroederFrequency(between(0, 1), between(40, 1))).toThrow(RangeError);
  expect(() => schroederFrequency(between(0.4, 1), between(-40, 1))).toThrow(RangeError);
  expect(() => schroederFrequency({ value: 1, interval: [2, 3] }, between(40, 1))).toThrow(
    RangeError,
  );
});
