import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import { exposureSentence, isLoud } from '../../../../components/probe/level/exposure-words';
import '../../../../components/probe/level/level-sheet';
import type { ClimbRequest, ClimbResult } from '../../../../src/soundlevel/sound-level';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';

expectQuiet();

/** A bench that keeps what was asked of a climb. */
class ClimbingBench extends FakeBench {
  readonly climbs: ClimbRequest[] = [];
  override climbLevel(request: ClimbRequest): Promise<void> {
    this.climbs.push(request);
    return Promise.resolve();
  }
}

function calibrated(bench: FakeBench): void {
  const { document } = bench.state;
  const soundLevel = {
    offsetDb: 120,
    how: 'calibrator',
    at: '2025-01-01T00:00:00Z',
    microphone: 'invented',
  } as const;
  bench.set({ document: { ...document, microphone: { ...document.microphone, soundLevel } } });
}

const numbers = (sheet: Element) =>
  findAll<HTMLInputElement>(find(sheet, 'll-climb-form'), 'll-number').map((one) =>
    find<HTMLInputElement>(one, 'input'),
  );

async function type(field: HTMLInputElement | undefined, text: string): Promise<void> {
  if (!field) throw new RangeError('no field');
  await userEvent.fill(field, text);
  await userEvent.keyboard('{Enter}');
}

describe('the climb to a test level', () => {
  it('is asked for with its margin and cap, and no target while not calibrated', async () => {
    const bench = new ClimbingBench('5.1');
    const sheet = await mount('ll-level-sheet', { bench });
    await type(numbers(sheet)[0], '32,5');
    await type(numbers(sheet)[1], '-10');
    await userEvent.click(find(find(sheet, 'll-climb-form'), '.go'));
    expect(bench.climbs).toEqual([{ marginDb: 32.5, targetDb: null, capDb: -10 }]);
    expect(bench.state.document.live.capDb).toBe(-10);
  });

  it('aims at a sound level too once calibrated', async () => {
    const bench = new ClimbingBench('5.1');
    calibrated(bench);
    const sheet = await mount('ll-level-sheet', { bench });
    await userEvent.click(find(sheet, 'input[type=checkbox]'));
    await settle(sheet);
    await type(numbers(sheet)[2], '78');
    await userEvent.click(find(find(sheet, 'll-climb-form'), '.go'));
    expect(bench.climbs).toEqual([{ marginDb: 25, targetDb: 78, capDb: -6 }]);
  });

  it('says what was typed wrong and asks with what was there before', async () => {
    const bench = new ClimbingBench('5.1');
    const sheet = await mount('ll-level-sheet', { bench });
    await type(numbers(sheet)[0], 'much');
    await type(numbers(sheet)[1], '3');
    await settle(sheet);
    expect(textOf(sheet)).toContain('“much” is not a number; margin over the noise stays');
    expect(textOf(sheet)).toContain('Never above lies between −60 and 0 dB');
    await userEvent.click(find(find(sheet, 'll-climb-form'), '.go'));
    expect(bench.climbs).toEqual([{ marginDb: 25, targetDb: null, capDb: -6 }]);
  });

  it('takes the level down with the cap', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-level-sheet', { bench });
    await type(numbers(sheet)[1], '-40');
    expect(bench.state.document.live).toMatchObject({ capDb: -40, gainDb: -40 });
  });

  it('shows gain, margin, sound level and time left while it runs, and stops', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-level-sheet', { bench });
    bench.set({
      activity: {
        kind: 'climbing',
        climb: {
          gainDb: -36,
          marginDb: 17.2,
          soundLevel: { weighting: 'C', time: 'slow', db: 64.1, calibrated: true },
          progress: 0.4,
          secondsLeft: 14,
        },
      },
    });
    await settle(sheet);
    const shown = textOf(find(sheet, 'll-climb-progress'));
    for (const words of ['−36.0 dB', '17.2 dB', '64.1 dB(C)', '14 s']) {
      expect(shown).toContain(words);
    }
    await userEvent.click(find(find(sheet, 'll-climb-progress'), 'button'));
    expect(bench.calls).toEqual(['stop']);
  });

  it('shows a margin nobody can tell as a dash', async () => {
    const bench = new FakeBench('5.1');
    const climb = { gainDb: -60, marginDb: null, soundLevel: null, progress: 0, secondsLeft: 30 };
    bench.set({ activity: { kind: 'climbing', climb } });
    const sheet = await mount('ll-level-sheet', { bench }, 366);
    expect(textOf(find(sheet, 'll-climb-progress'))).toContain('Over the noise –');
  });

  const result: ClimbResult = {
    end: 'margin',
    gainDb: -24,
    marginDb: 26.1,
    sentence: 'The noise margin is met.',
    linearity: { stepDb: 6.02, passes: true },
  };

  it('says how it ended and whether the path is linear', async () => {
    const bench = new FakeBench('5.1', { climbed: result });
    const sheet = await mount('ll-level-sheet', { bench });
    expect(textOf(sheet)).toContain('The noise margin is met.');
    expect(textOf(sheet)).toContain('6 dB sent come back as 6.02 dB, in order');
    bench.set({ climbed: { ...result, end: 'cap', linearity: { stepDb: 3.9, passes: false } } });
    await settle(sheet);
    expect(textOf(sheet)).toContain('3.90 dB, not in order');
    bench.set({ climbed: { ...result, linearity: null } });
    await settle(sheet);
    expect(textOf(sheet)).toContain('6 dB sent come back as cannot tell');
  });

  it('is not offered for a recording', async () => {
    const bench = new FakeBench('5.1');
    bench.setRig('recording');
    const sheet = await mount('ll-level-sheet', { bench });
    expect(findAll(sheet, 'll-climb-form')).toEqual([]);
    expect(textOf(sheet)).toContain('where the take is played');
  });
});

describe('the level by hand', () => {
  it('starts quiet, moves by 6 dB and never passes the cap', async () => {
    const bench = new FakeBench('5.1');
    const sheet = await mount('ll-level-sheet', { bench }, 360);
    const [quieter, louder] = findAll<HTMLButtonElement>(find(sheet, 'll-test-level'), '.ghost');
    const level = () => bench.state.document.live.gainDb;
    expect(level()).toBe(-30);
    quieter?.click();
    expect(level()).toBe(-36);
    for (let i = 0; i < 9; i++) {
      louder?.click();
      await settle(sheet);
    }
    expect(level()).toBe(-6);
    expect(louder?.disabled).toBe(true);
    expect(textOf(sheet)).toContain('leave the room or wear hearing protection');
  });
});

describe('the sound taken today', () => {
  it('is told against what ears should take in a day', () => {
    expect(plain(exposureSentence({ dose: 0.12, equivalentDb: 81.3, seconds: 840 }))).toBe(
      '12 % of what ears should take in a day: 81.3 dB(A) on average over 14 min.',
    );
  });

  it('cannot be told without a calibration, and is nothing before anything sounds', () => {
    expect(exposureSentence({ dose: null, equivalentDb: null, seconds: 40 })).toContain(
      'How loud cannot be told',
    );
    expect(exposureSentence({ dose: null, equivalentDb: null, seconds: 0 })).toBe(
      'Nothing has sounded yet today.',
    );
  });

  it('is loud above 85 dB(A) or from half of a day’s share on', () => {
    expect(isLoud({ dose: 0.01, equivalentDb: 85.1, seconds: 10 })).toBe(true);
    expect(isLoud({ dose: 0.5, equivalentDb: 80, seconds: 10 })).toBe(true);
    expect(isLoud({ dose: 0.49, equivalentDb: 85, seconds: 10 })).toBe(false);
    expect(isLoud({ dose: null, equivalentDb: null, seconds: 10 })).toBe(false);
  });
});
