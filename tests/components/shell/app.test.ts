import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../../components/patch/patch-stage';
import '../../../components/plan/plan-stage';
import '../../../components/probe/probe-stage';
import '../../../components/prove/prove-stage';
import '../../../components/shell/app';
import type { App } from '../../../components/shell/app';
import '../../../components/theme/base.css';
import { choosePreferences, readPreferences } from '../../../src/locale/kept-preferences';
import { noPreferences } from '../../../src/locale/locale';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { deepText, findDeep } from '../deep';
import { FakeBench, layoutOf } from '../fake-bench';
import { inventedNoise } from '../probe/noise/invented-noise';
import { settle } from '../mount';
import { expectQuiet } from '../quiet';
import { sampleReadings } from '../sample-readings';

expectQuiet();

let app: App;

async function show(bench: FakeBench, stage = 'plan'): Promise<FakeBench> {
  location.hash = stage;
  app = document.createElement('ll-app');
  app.bench = bench;
  document.body.append(app);
  await app.updateComplete;
  await settle(app);
  return bench;
}

beforeEach(() => {
  localStorage.clear();
  sessionStorage.clear();
});
afterEach(() => {
  document.body.replaceChildren();
  location.hash = '';
  delete document.documentElement.dataset['theme'];
});

describe('Stop', () => {
  it('answers to Esc from anywhere', async () => {
    const bench = await show(new FakeBench());
    await userEvent.keyboard('{Escape}');
    expect(bench.calls).toEqual(['stop']);
  });

  it('answers to Esc from inside a field', async () => {
    const bench = await show(new FakeBench());
    const field = findDeep(app, '#name');
    await userEvent.click(field);
    await userEvent.keyboard('{Escape}');
    expect(bench.calls).toEqual(['stop']);
  });

  it('answers to its button while nothing plays, too', async () => {
    const bench = await show(new FakeBench());
    await userEvent.click(findDeep(app, '.stop'));
    expect(bench.calls).toEqual(['stop']);
  });
});

describe('the mark of the practice room', () => {
  for (const stage of ['plan', 'patch', 'prove']) {
    it(`stands on ${stage}`, async () => {
      await show(new FakeBench(), stage);
      expect(deepText(app)).toContain('Simulated');
    });
  }

  it('stays while simulated readings are shown, whatever the rig is now', async () => {
    const bench = new FakeBench('5.1', { readings: sampleReadings(layoutOf('5.1')) });
    bench.setRig('live');
    await show(bench);
    expect(deepText(app)).toContain('Simulated');
  });

  it('is gone when nothing is simulated', async () => {
    const bench = new FakeBench('5.1');
    bench.setRig('live');
    await show(bench);
    expect(deepText(app)).not.toContain('Simulated');
  });
});

describe('the stages', () => {
  it('follow the address', async () => {
    await show(new FakeBench());
    expect(findDeep(app, 'll-plan')).toBeInstanceOf(HTMLElement);
    location.hash = 'prove';
    await expect.poll(() => app.renderRoot.querySelector('ll-prove')).not.toBeNull();
    expect(document.title).toBe('Prove · Leadline');
  });

  it('show the sheet that the address names', async () => {
    await show(new FakeBench(), 'probe/level');
    expect(findDeep(app, 'll-level-sheet')).toBeInstanceOf(HTMLElement);
    expect(findDeep(app, 'll-rail [aria-current]').textContent).toContain('Probe');
    expect(document.title).toBe('Probe · Leadline');
  });

  it('take the speaker picked on the plan for the noise', async () => {
    await show(new FakeBench('5.2.4'), 'probe/noise');
    // The plan is folded on this narrow screen; picking works all the same.
    const speaker = findDeep(app, '[data-channel="TpFL"]');
    speaker.dispatchEvent(new MouseEvent('click', { bubbles: true, composed: true }));
    await expect.poll(() => deepText(app)).toContain('Play noise on TpFL');
  });

  it('ring the speaker that plays noise on the plan', async () => {
    const bench = await show(new FakeBench('5.2.4'), 'probe/noise');
    bench.set({ activity: { kind: 'noise', noise: inventedNoise() } });
    await expect.poll(() => findDeep(app, 'll-plan-drawing')).toHaveProperty('playing', 'FL');
  });

  it('keep the selected speaker from one to the next and let it go when it is not there', async () => {
    const bench = await show(new FakeBench('5.2.4'), 'patch');
    await userEvent.click(findDeep(app, '[data-channel="TpFL"]'));
    location.hash = 'plan';
    await expect
      .poll(() => findDeep(app, 'll-channel-facts').shadowRoot?.textContent)
      .toContain('Top front left');
    bench.setLayout('5.1');
    await expect.poll(() => deepText(app)).toContain('Pick a speaker');
  });
});

describe('a trouble', () => {
  it('is said on any stage until it is understood', async () => {
    const bench = await show(new FakeBench(), 'patch');
    bench.set({ trouble: { trouble: 'device-gone', sentence: 'The microphone was unplugged.' } });
    await expect.poll(() => deepText(app)).toContain('The microphone was unplugged.');
    await userEvent.click(findDeep(app, 'll-trouble .ghost'));
    expect(bench.calls).toEqual(['dismissTrouble']);
    await expect.poll(() => deepText(app)).not.toContain('unplugged');
  });

  it('with the layout stands beside its field, and the layout stays', async () => {
    const bench = await show(new FakeBench('5.1'));
    await userEvent.fill(findDeep(app, '#name'), '12.3');
    await userEvent.keyboard('{Enter}');
    expect(bench.calls).toEqual(['setLayout 12.3']);
    await expect.poll(() => deepText(app)).toContain('The layout is still 5.1.');
    expect(bench.state.layout.name).toBe('5.1');
    expect((findDeep(app, '#name') as HTMLInputElement).value).toBe('12.3');
  });
});

describe('the header', () => {
  it('renames the session and keeps the old name when the new one is empty', async () => {
    const bench = await show(new FakeBench());
    const name = findDeep(app, 'll-session-name input');
    await userEvent.fill(name, 'Garden room');
    await userEvent.keyboard('{Tab}');
    expect(bench.state.document.name).toBe('Garden room');
    await userEvent.fill(name, '  ');
    await userEvent.keyboard('{Tab}');
    expect(bench.state.document.name).toBe('Garden room');
  });

  it('keeps the longest name clear of the stages, at every width beside them', async () => {
    const bench = await show(new FakeBench());
    bench.change('Rename', (document) => ({ ...document, name: 'Wide '.repeat(16).trim() }));
    for (const width of [900, 960, 1024, 1100, 1200, 1300, 1440, 1920]) {
      await page.viewport(width, 768);
      await new Promise(requestAnimationFrame);
      const rail = findDeep(app, 'll-rail').getBoundingClientRect();
      for (const part of [
        'll-session-name',
        'button.sessions',
        'll-history-buttons',
        '.simulated',
      ]) {
        const { right, width: wide } = findDeep(app, part).getBoundingClientRect();
        expect(right, `${part} at ${width}`).toBeLessThanOrEqual(rail.left);
        expect(wide, `${part} at ${width}`).toBeGreaterThan(0);
      }
    }
    await page.viewport(414, 896);
  });

  it('walks through the themes and keeps the one chosen', async () => {
    // On a phone the theme is chosen among the settings.
    await page.viewport(1024, 768);
    await show(new FakeBench());
    const button = findDeep(app, 'll-theme-button button');
    await userEvent.click(button);
    expect(document.documentElement.dataset['theme']).toBe('light');
    await userEvent.click(button);
    expect(document.documentElement.dataset['theme']).toBe('dark');
    document.body.replaceChildren();
    delete document.documentElement.dataset['theme'];
    await show(new FakeBench());
    expect(document.documentElement.dataset['theme']).toBe('dark');
    await page.viewport(414, 896);
  });

  it('puts units and marks in force at once, and keeps them', async () => {
    await show(new FakeBench());
    await userEvent.click(findDeep(app, 'll-settings-button button'));
    const dialog = findDeep(app, 'll-settings-button dialog');
    const pick = (words: string): Promise<void> => userEvent.click(within(dialog, words));
    await pick('Imperial');
    await pick('1,5, 31 January');
    expect(deepText(dialog)).toMatch(/7\sft\s10,5\sin/);
    expect(localeInForce()).toMatchObject({ units: 'imperial', numbers: 'de-DE' });
    expect(readPreferences()).toMatchObject({ units: 'imperial', numbers: 'de-DE' });
    choosePreferences(noPreferences);
    localStorage.removeItem('leadline-locale');
  });
});

describe('an element with a bench', () => {
  it('listens while it is on screen and no longer', async () => {
    const bench = await show(new FakeBench());
    expect(bench.listening).toBeGreaterThan(0);
    document.body.replaceChildren();
    expect(bench.listening).toBe(0);
  });
});

describe('the plan at the side', () => {
  it('moves each speaker to its place as soon as it is read', async () => {
    const { channels } = sampleReadings(layoutOf('5.1'));
    const activity = {
      kind: 'reading',
      progress: 0.3,
      secondsLeft: 4,
      channels: channels.slice(0, 2),
    } as const;
    await show(new FakeBench('5.1', { activity }));
    const measured = (label: string): boolean =>
      !findDeep(app, `[data-channel="${label}"]`).classList.contains('unmeasured');
    expect(['FL', 'FR', 'FC', 'SiL'].map(measured)).toEqual([true, true, false, false]);
  });
});

/** The choice with these words, inside the controls of a dialog. */
function within(dialog: Element, words: string): Element {
  const labels = [...dialog.querySelectorAll('ll-choice')].flatMap((choice) => [
    ...(choice.shadowRoot?.querySelectorAll('label') ?? []),
  ]);
  const found = labels.find((label) => label.textContent?.trim() === words);
  if (!found) throw new Error(`no choice says ${words}`);
  return found;
}
