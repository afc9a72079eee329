import { expect, it } from 'vitest';
import '../../../components/theme/base.css';
import '../../../components/plan/channel-facts';
import { inventedRolloff, inventedTogether } from '../../src/reading/told-together';
import { benchWith } from '../bench-of';
import { emptyReading, inventedReadings, layout524 } from '../fixtures';
import { findAll, mount, notNumbers, plain, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

it('show the roll-off of the model beside that of the speaker, and from what', async () => {
  const bench = benchWith(layout524, inventedReadings(layout524));
  bench.set({ together: [inventedTogether(['SiL', 'SiR'], inventedRolloff(66))] });
  const facts = await mount('ll-channel-facts', { bench, selected: 'SiR' }, 320);
  expect(textOf(facts)).toMatch(/Roll-off, −3 dB \d+ Hz \d+–\d+ Box closed/);
  expect(textOf(facts)).toContain('Read from 3 seats and 2 speakers 66 Hz 59–73');
  const other = await mount('ll-channel-facts', { bench, selected: 'FC' }, 320);
  expect(textOf(other)).not.toContain('Read from');
});

it('say of every number that is missing why, and the one thing to do, each once', async () => {
  const bench = benchWith(layout524, inventedReadings(layout524));
  const facts = await mount('ll-channel-facts', { bench, selected: 'FC' }, 320);
  const said = findAll(facts, 'li').map((one) => plain(one.textContent ?? ''));
  expect(said.filter((one) => one.startsWith('How long the sound takes to die away')).length).toBe(
    1,
  );
  expect(said.filter((one) => one.startsWith('No distortion')).length).toBe(1);
});

it('say one sentence of a speaker that gave nothing', async () => {
  const readings = inventedReadings(layout524);
  const channels = layout524.channels.map(({ label }) => emptyReading(label));
  const bench = benchWith(layout524, { ...readings, channels });
  const facts = await mount('ll-channel-facts', { bench, selected: 'FC' }, 320);
  expect(notNumbers(facts)).toEqual([]);
  const said = findAll(facts, 'li').map((one) => plain(one.textContent ?? ''));
  expect(said).toEqual(['FC gave no sound above the room noise.']);
});
