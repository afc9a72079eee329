import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import { find, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { button } from '../samples';
import { earSheet } from './ear-fixture';

expectQuiet();

describe('the ear check by keyboard alone', () => {
  it('finds exchanged and silent channels, names the outputs, and tests only those again', async () => {
    const { bench, sheet, keys } = await earSheet();
    await keys(' ');
    expect(bench.played).toEqual(['start FL']);
    // FR sounds from SiL and SiL from FR; FC is silent; all others are right.
    await keys('h', 'e', '4', 's', 'e', '2', 'h', 'h', 'h', 'h', 'h');
    // Sub 1 is the tenth of eleven.
    expect(bench.played.at(-1)).toBe('change Sub 1');
    await keys('h', 'h');
    expect(bench.state.activity.kind).toBe('idle');
    expect(bench.state.document.earAnswers).toMatchObject({
      FL: { kind: 'here' },
      FR: { kind: 'elsewhere', speaker: 'SiL' },
      FC: { kind: 'silent' },
      SiL: { kind: 'elsewhere', speaker: 'FR' },
      'Sub 2': { kind: 'here' },
    });
    const said = textOf(find(sheet, 'll-ear-conclusion'));
    expect(said).toContain('Channels FR and SiL are exchanged.');
    expect(said).toContain('FR (Front right) and SiL (Side left)');
    expect(said).toContain('Channel FC is silent.');
    expect(said).toContain('Switch the amplifiers off.');

    const before = bench.played.length;
    button(sheet, 'Play only these again').focus();
    await keys('{Enter}');
    expect(Object.keys(bench.state.document.earAnswers)).toHaveLength(8);
    await keys('h', 'h', 'h');
    expect(bench.played.slice(before)).toEqual(['start FR', 'change FC', 'change SiL']);
    expect(bench.state.activity.kind).toBe('idle');
    expect(textOf(sheet)).toContain('Every channel sounds from its own speaker');
  });

  it('goes in wiring order: heights before subs as the outputs stand, not as a take has them', async () => {
    const { bench, keys } = await earSheet();
    await keys(' ', ...Array.from({ length: 10 }, () => 'h'));
    expect(bench.played.map((one) => one.replace(/^\w+ /, ''))).toEqual([
      'FL',
      'FR',
      'FC',
      'SiL',
      'SiR',
      'TpFL',
      'TpFR',
      'TpBL',
      'TpBR',
      'Sub 1',
      'Sub 2',
    ]);
  });

  it('plays mains from 500 to 2000 Hz and subs from 30 to 80 Hz, at the test level', async () => {
    const { bench, keys } = await earSheet('2.1', false);
    await keys(' ', 'h', 'h');
    expect(bench.asked.map(({ lowHz, highHz, gainDb }) => [lowHz, highHz, gainDb])).toEqual([
      [500, 2000, -30],
      [500, 2000, -30],
      [30, 80, -30],
    ]);
  });

  it('skips with Space, goes back with B and comes round to what was skipped', async () => {
    const { bench, keys } = await earSheet('3.1', false);
    await keys(' ', ' ', 'h', 'b', 'b', 's', 'h');
    expect(bench.played).toEqual([
      'start FL',
      'change FR',
      'change FC',
      'change FR',
      'change FL',
      'change FC',
      'change Sub 1',
    ]);
    await keys('s');
    expect(bench.state.activity.kind).toBe('idle');
    expect(bench.state.document.earAnswers).toEqual({
      FR: { kind: 'here' },
      FL: { kind: 'silent' },
      FC: { kind: 'here' },
      'Sub 1': { kind: 'silent' },
    });
  });

  it('takes two digits where there are ten speakers and more, and a single one with Enter', async () => {
    const { bench, sheet, keys } = await earSheet();
    await keys(' ', 'e', '1');
    expect(bench.state.document.earAnswers).toEqual({});
    expect(textOf(sheet)).toContain('type its number: 1…, then Enter');
    await keys('1');
    expect(bench.state.document.earAnswers.FL).toEqual({ kind: 'elsewhere', speaker: 'Sub 2' });
    await keys('e', '1', '{Enter}');
    expect(bench.state.document.earAnswers.FR).toEqual({ kind: 'elsewhere', speaker: 'FL' });
  });

  it('leaves pointing with E or B, and ignores a number that is no speaker', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ', 'e', '9');
    expect(textOf(sheet)).toContain('Where did it come from?');
    await keys('b');
    expect(textOf(sheet)).not.toContain('Where did it come from?');
    await keys('e', 'e');
    expect(textOf(sheet)).not.toContain('Where did it come from?');
    expect(bench.played).toEqual(['start FL']);
    expect(bench.state.document.earAnswers).toEqual({});
  });

  it('plays nothing on after it was stopped, and takes the answer all the same', async () => {
    const { bench, keys } = await earSheet('3.1', false);
    await keys(' ');
    bench.stop();
    await keys('h');
    expect(bench.played).toEqual(['start FL']);
    expect(bench.state.document.earAnswers).toEqual({ FL: { kind: 'here' } });
    await keys(' ');
    expect(bench.played).toEqual(['start FL', 'start FR']);
  });

  it('walks over the plan by arrows, and points with Enter only', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ', 'e');
    const plan = document.createElement('div');
    plan.tabIndex = 0;
    plan.addEventListener('keydown', (event) => event.preventDefault());
    document.body.append(plan);
    plan.focus();
    for (const label of ['FR', 'FC'] as const) {
      await keys('{ArrowDown}');
      sheet.selected = label;
      await settle(sheet);
    }
    expect(bench.state.document.earAnswers).toEqual({});
    await keys('{Enter}');
    expect(bench.state.document.earAnswers).toEqual({ FL: { kind: 'elsewhere', speaker: 'FC' } });
  });

  it('leaves keys alone where they are typed', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ');
    const level = find<HTMLInputElement>(find(sheet, 'll-number'), 'input');
    await userEvent.fill(level, '-24');
    await userEvent.keyboard('hs');
    expect(bench.state.document.earAnswers).toEqual({});
    await userEvent.fill(level, '-24');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(bench.asked.at(-1)).toMatchObject({ channel: 'FL', gainDb: -24 });
  });
});
