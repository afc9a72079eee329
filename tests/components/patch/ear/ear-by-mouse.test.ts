import { describe, expect, it } from 'vitest';
import { find, findAll, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';
import { earSheet } from './ear-fixture';

expectQuiet();

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

  it('leaves Space to the next channel after a press by mouse', async () => {
    const { bench, keys, press } = await earSheet('3.1', false);
    await press('Play FL');
    await press('Heard here');
    await keys(' ');
    expect(bench.played).toEqual(['start FL', 'change FR', 'change FC']);
    expect(Object.keys(bench.state.document.earAnswers)).toEqual(['FL']);
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
