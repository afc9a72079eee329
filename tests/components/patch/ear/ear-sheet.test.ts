import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/patch/ear/ear-sheet';
import { find, findAll, mount, notNumbers, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { inventedNoise } from '../../probe/noise/invented-noise';
import { button, sampleSheet } from '../samples';
import { NoisyBench } from './noisy-bench';

expectQuiet();

async function earSheet(layout = '5.2.4', sheeted = true) {
  const bench = new NoisyBench(layout, sheeted ? await sampleSheet(11) : null);
  const sheet = await mount('ll-ear-sheet', { bench }, 1000);
  /** Keys as they are pressed; a digit is the key of that digit. */
  const keys = async (...pressed: string[]) => {
    for (const key of pressed) {
      await userEvent.keyboard(key);
      await settle(sheet);
    }
  };
  const press = async (words: string) => {
    await userEvent.click(button(sheet, words));
    await settle(sheet);
  };
  /** The row of a speaker in the list. */
  const speaker = async (label: string) => {
    await userEvent.click(find(find(sheet, 'll-ear-list'), `button[title$=" ${label}"]`));
    await settle(sheet);
  };
  return { bench, sheet, keys, press, speaker };
}

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
    expect(textOf(sheet)).toContain('type its number : 1…, then Enter');
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

describe('the ear check by mouse alone', () => {
  it('answers by buttons, points in the list and on the plan, and ends in advice', async () => {
    const { bench, sheet, press, speaker } = await earSheet('3.1', false);
    await press('Play FL');
    await press('Heard elsewhere');
    await speaker('FR');
    await press('Heard elsewhere');
    sheet.selected = 'FC';
    await settle(sheet);
    await press('Heard elsewhere');
    await speaker('FL');
    await press('Silent');
    expect(bench.played).toEqual(['start FL', 'change FR', 'change FC', 'change Sub 1']);
    const said = textOf(find(sheet, 'll-ear-conclusion'));
    expect(said).toContain('Channels FL, FR and FC went round');
    expect(said).toContain('Channel Sub 1 is silent.');
    await press('Play only these again');
    for (let count = 0; count < 4; count++) await press('Heard here');
    expect(textOf(sheet)).toContain('Every channel sounds from its own speaker');
    await press('Play all again');
    expect(bench.state.document.earAnswers).toEqual({});
    await press('Stop the noise');
    expect(bench.state.activity.kind).toBe('idle');
  });

  it('takes the speaker itself, pointed at, as heard here', async () => {
    const { bench, press, speaker } = await earSheet('3.1', false);
    await press('Play FL');
    await press('Heard elsewhere');
    await speaker('FL');
    expect(bench.state.document.earAnswers).toEqual({ FL: { kind: 'here' } });
  });

  it('asks the shell to let go of the selected speaker, so that it can be pointed at', async () => {
    const { sheet, press } = await earSheet('3.1', false);
    const picked: unknown[] = [];
    const hear = (event: CustomEvent) => picked.push(event.detail);
    document.body.addEventListener('ll-select', hear);
    await press('Play FL');
    await press('Heard elsewhere');
    document.body.removeEventListener('ll-select', hear);
    expect(picked).toEqual([null]);
    expect(textOf(sheet)).toContain('Click the speaker on the plan');
  });

  it('plays any speaker of the list, and marks what was heard of it', async () => {
    const { bench, sheet, press, speaker } = await earSheet('3.1', false);
    await speaker('FC');
    await press('Heard elsewhere');
    await speaker('FR');
    expect(bench.played).toEqual(['start FC', 'change Sub 1']);
    const rows = findAll(find(sheet, 'll-ear-list'), 'li').map(textOf);
    expect(rows[1]).toContain('plays FC');
    expect(rows[2]).toContain('heard from FR');
  });
});

describe('where and when there is no ear check', () => {
  it('says why not with a recording', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    bench.setRig('recording');
    await settle(sheet);
    expect(textOf(sheet)).toContain('this computer plays nothing');
    await keys(' ', 'h');
    expect(bench.played).toEqual([]);
  });

  it('says that the practice room makes no sound', async () => {
    const { sheet } = await earSheet('3.1', false);
    expect(textOf(sheet)).toContain('The practice room makes no sound');
  });

  it('waits while something else sounds, and says so', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    bench.set({ activity: { kind: 'noise', noise: inventedNoise() } });
    await settle(sheet);
    await keys(' ', 'h');
    expect(bench.played).toEqual([]);
    expect(textOf(sheet)).toContain('Go to Noise');
  });

  it('shows the plugs to move first, and takes no answer meanwhile', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ');
    bench.set({ activity: { kind: 'waiting', prompt: { title: 'Move a plug', steps: ['One.'] } } });
    await settle(sheet);
    await keys('h');
    expect(textOf(sheet)).toContain('Move a plug');
    expect(bench.state.document.earAnswers).toEqual({});
  });

  it('falls silent when it is left', async () => {
    const { bench, sheet, keys } = await earSheet('3.1', false);
    await keys(' ');
    sheet.remove();
    expect(bench.state.activity.kind).toBe('idle');
  });

  it('holds nineteen speakers at every width', async () => {
    const bench = new NoisyBench('9.4.6', await sampleSheet(16));
    for (const width of [366, 720, 1080]) {
      const sheet = await mount('ll-ear-sheet', { bench }, width);
      expect(findAll(find(sheet, 'll-ear-list'), 'li')).toHaveLength(19);
      expect(notNumbers(sheet)).toEqual([]);
      expect(sheet.scrollWidth).toBeLessThanOrEqual(width);
    }
  });
});
