import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import { walkOrder } from '../../../../components/patch/walk/walk-order';
import '../../../../components/patch/walk/walk-sheet';
import { wiringMarks } from '../../../../components/patch/wiring-marks';
import type { ChannelLabel } from '../../../../src/system/channel';
import { trouble } from '../../../../src/trouble';
import type { WalkStop } from '../../../../src/wirecheck/walk';
import { FakeBench, layoutOf } from '../../fake-bench';
import { find, findAll, mount, notNumbers, overlappingTexts, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { button, walkStops } from '../samples';

expectQuiet();

const labels: readonly ChannelLabel[] = ['FL', 'FR', 'FC', 'SiL', 'SiR'];

const stops = (wiring: Partial<Record<ChannelLabel, ChannelLabel>> = {}): WalkStop[] =>
  walkStops(labels, wiring);

function benchAfter(walk: readonly WalkStop[]): FakeBench {
  const bench = new FakeBench('5.0');
  bench.change('Walk', (document) => ({ ...document, walk }));
  bench.calls.length = 0;
  return bench;
}

describe('the walk sheet', () => {
  it('goes once round the room, then to the heights', () => {
    const order = walkOrder(layoutOf('5.0.2'));
    expect(order.slice(0, 5)).toEqual(['FL', 'FC', 'FR', 'SiR', 'SiL']);
    expect(order.slice(5)).toEqual(['TpFL', 'TpFR']);
  });

  it('plays at the next speaker by key and by button, and at one that is chosen', async () => {
    const bench = new FakeBench('5.0');
    const sheet = await mount('ll-walk-sheet', { bench }, 1000);
    await userEvent.keyboard(' ');
    await userEvent.click(find(find(sheet, 'll-walk-list'), 'button[title$=" SiR next"]'));
    await settle(sheet);
    await userEvent.click(button(sheet, 'Play here'));
    await userEvent.click(button(sheet, 'Play from the seat'));
    expect(bench.calls).toEqual(['walkStop FL 0', 'walkStop SiR 0', 'walkStop seat 0']);
  });

  it('says what was found, marks it on the plan, and forgets only the stops concerned', async () => {
    const bench = benchAfter(stops({ FL: 'FC', FC: 'FL' }));
    const sheet = await mount('ll-walk-sheet', { bench }, 1000);
    expect(textOf(find(sheet, 'll-walk-conclusion'))).toContain('FC and FL are exchanged');
    const marks = wiringMarks(bench.state);
    expect(marks.get('FL')).toEqual({ right: false, words: 'plays FC' });
    expect(marks.get('SiR')).toEqual({ right: true, words: 'found here' });
    expect(wiringMarks({ ...bench.state, mic: null })).toBe(marks);
    await userEvent.click(button(sheet, 'Walk to these again'));
    expect(bench.state.document.walk.map(({ speaker }) => speaker)).toEqual(['FR', 'SiL', 'SiR']);
  });

  it('says that all is well when it is', async () => {
    const sheet = await mount('ll-walk-sheet', { bench: benchAfter(stops()) }, 1000);
    expect(textOf(find(sheet, 'll-walk-conclusion'))).toContain(
      'Every channel sounds from its own speaker',
    );
    expect(textOf(sheet)).toContain('Every speaker was visited');
  });

  it('shows what plays, and can be stopped, while a stop plays', async () => {
    const bench = new FakeBench('5.0');
    const play = { phase: 'playing', progress: 0.4, secondsLeft: 4, position: 9 } as const;
    bench.set({ activity: { kind: 'walking', at: 'FR', play, channel: 'SiL' } });
    const sheet = await mount('ll-walk-sheet', { bench }, 1000);
    expect(textOf(sheet)).toContain('Hold still at FR');
    expect(textOf(sheet)).toContain('SiL');
    expect(button(sheet, 'Play here').disabled).toBe(true);
    await userEvent.click(button(sheet, 'Stop'));
    expect(bench.calls).toEqual(['stop']);
  });

  it('stays where it is when a stop fails, even going on by itself', async () => {
    const bench = new FakeBench('5.0');
    const sheet = await mount('ll-walk-sheet', { bench }, 1000);
    await userEvent.click(find(find(sheet, 'll-check'), 'input'));
    bench.set({ trouble: trouble('too-loud', 'The microphone clipped at this stop.') });
    await userEvent.click(button(sheet, 'Play here'));
    await settle(sheet);
    expect(textOf(sheet)).toContain('To FL');
  });

  it.each([360, 700, 1100])('fits %d px without overlap and without NaN', async (width) => {
    const bench = benchAfter(stops({ FL: 'FC', FC: 'FL' }).slice(0, 4));
    const sheet = await mount('ll-walk-sheet', { bench }, width);
    expect(overlappingTexts(sheet)).toEqual([]);
    expect(notNumbers(sheet)).toEqual([]);
    for (const one of findAll(sheet, '.sheet')) {
      expect(one.scrollWidth).toBeLessThanOrEqual(one.clientWidth + 1);
    }
  });
});
