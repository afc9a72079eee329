import { describe, expect, it } from 'vitest';
import '../../../components/theme/base.css';
import '../../../components/plan/plan-stage';
import '../../../components/probe/level/exposure-facts';
import { hearingLimit } from '../../../components/hearing-limit';
import { planFinding } from '../../../components/plan/plan-finding';
import { deep, find, findAll, mount, notNumbers, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';
import { PlanBench } from './plan-bench';

expectQuiet();

describe('the plan stage', () => {
  it('names a list of speakers by its title, with the deviation in words', async () => {
    const bench = new PlanBench('FL FR FC Sub1 SiL SiR TpSiL TpSiR');
    const told = (stage: HTMLElement) => plain(find(stage, '.lede p').textContent);
    expect(told(await mount('ll-plan', { bench }))).toBe(
      'That is 5.1.2, with TpSiL and TpSiR instead of TpFL and TpFR: 8 channels to probe.',
    );
    expect(told(await mount('ll-plan', { bench: new PlanBench('5.1.2') }))).toBe(
      'That is 5.1.2: 8 channels to probe.',
    );
  });

  it('says how loud is too loud in the words of the level sheet', async () => {
    const bench = new PlanBench('5.1');
    const stage = await mount('ll-plan', { bench });
    const exposure = await mount('ll-exposure-facts', { bench });
    expect(textOf(stage)).toContain(plain(hearingLimit()));
    expect(textOf(exposure)).toContain(plain(hearingLimit()));
  });

  it('lists where a sub was declared, and that it may stand anywhere before', async () => {
    const bench = new PlanBench('5.1');
    const stage = await mount('ll-plan', { bench });
    const row = () =>
      textOf(findAll(stage, 'tbody tr').find((one) => textOf(one).includes('Sub 1')) ?? stage);
    expect(row()).toContain('anywhere');
    const place = { azimuthDegrees: 150, elevationDegrees: 0, distanceMetres: 3 };
    bench.change('Move', (document) => ({
      ...document,
      system: { ...document.system, places: { 'Sub 1': place } },
    }));
    await settle(stage);
    expect(row()).toContain('150° left');
  });

  it('says in its title what stands out, and speaks gently', async () => {
    const bench = new PlanBench('5.1');
    const stage = await mount('ll-plan', { bench });
    expect(textOf(find(stage, '#places'))).toBe('Every speaker stands within its range');
    const place = (azimuthDegrees: number) => ({
      azimuthDegrees,
      elevationDegrees: 0,
      distanceMetres: null,
    });
    bench.change('Move', (document) => ({
      ...document,
      system: { ...document.system, places: { SiL: place(130), SiR: place(-130) } },
    }));
    await settle(stage);
    expect(textOf(find(stage, '#places'))).toBe(
      'Two speakers stand outside the range of the standard',
    );
    expect(textOf(stage)).toContain('are the side surrounds all the same');
    expect(textOf(stage)).toContain('None of this keeps a speaker from being measured');
  });

  for (const width of [366, 800, 1100]) {
    it(`fits ${width} px without a way to scroll sideways`, async () => {
      const seats = [{ name: 'Seat 2', rightMetres: 0.6, backMetres: 0 }];
      const bench = new PlanBench('9.4.6', { seats });
      const stage = await mount('ll-plan', { bench, selected: 'TpSiL' }, width);
      const edge = stage.getBoundingClientRect().right + 1;
      const beyond = deep(stage).filter((one) => {
        if (one.closest('.scroll, .unseen, svg') || one.classList.contains('unseen')) return false;
        if (one.getRootNode() instanceof ShadowRoot && isInTable(one)) return false;
        return one.getBoundingClientRect().right > edge;
      });
      expect(beyond.map((one) => one.outerHTML.slice(0, 80))).toEqual([]);
      expect(notNumbers(stage)).toEqual([]);
    });
  }
});

/** The table of angles scrolls by itself. */
function isInTable(one: Element): boolean {
  const root = one.getRootNode();
  if (!(root instanceof ShadowRoot)) return false;
  return root.host.localName === 'll-angle-table' || isInTable(root.host);
}

describe('the finding of a plan', () => {
  it('speaks of the room first, then of ranges, then of pairs', () => {
    const room = { kind: 'room', labels: ['FL'], sentence: '' } as const;
    const range = { kind: 'range', labels: ['SiL'], sentence: '' } as const;
    const unequal = { kind: 'unequal', labels: ['FL', 'FR'], sentence: '' } as const;
    expect(planFinding([range, unequal, room])).toBe(
      'One speaker stands outside the room as it is drawn',
    );
    expect(planFinding([range, range, unequal])).toBe(
      'One speaker stands outside the range of the standard',
    );
    expect(planFinding([unequal])).toBe('A pair stands at unequal angles');
  });
});
