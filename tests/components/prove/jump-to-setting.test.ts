import { beforeEach, describe, expect, it } from 'vitest';
import '../../../components/theme/base.css';
import '../../../components/patch/patch-stage';
import '../../../components/propose/propose-stage';
import { addressOf } from '../../../components/prove/change-words';
import type { SettingChange } from '../../../src/proof/proof';
import type { ChannelLabel } from '../../../src/system/channel';
import { benchWith } from '../bench-of';
import { inventedReadings, layout524 } from '../fixtures';
import { deep, findAll, mount, settle } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();
beforeEach(() => {
  location.hash = '';
});

function change(
  setting: SettingChange['setting'],
  channels: readonly ChannelLabel[],
  group: SettingChange['group'] = null,
): SettingChange {
  return { setting, channels, group, from: null, to: 0, unit: null };
}

/** What has the focus, through all shadow roots. */
function focused(): Element | null {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at;
}

/** Follows the link of a change and gives the place that it reveals. */
async function follow(
  one: SettingChange,
  selected: ChannelLabel | null,
): Promise<{ readonly sheet: string; readonly place: HTMLElement | undefined }> {
  const bench = benchWith(layout524, inventedReadings(layout524));
  location.hash = addressOf(one, layout524);
  const [, stage = '', sheet = ''] = /^#(\w+)\/([\w-]+)/.exec(location.hash) ?? [];
  const name = stage === 'patch' ? 'll-patch' : 'll-propose';
  const element = await mount(name, { bench, selected }, 1060);
  await settle(element);
  const [place] = findAll(element, '[data-revealed]');
  return { sheet: `${stage}/${sheet}`, place };
}

describe('The link of a failed line', () => {
  const onList = [
    [change('distance', ['SiL']), 'distance SiL'],
    [change('trim', ['FR']), 'level FR'],
    [change('distance', ['Sub 1']), 'distance Sub 1'],
    [change('polarity', ['Sub 2']), 'polarity Sub 2'],
  ] as const;
  for (const [one, line] of onList) {
    it(`opens the list at “${line}”, with the focus on it`, async () => {
      const { sheet, place } = await follow(one, one.channels[0] ?? null);
      expect(sheet).toBe('propose/list');
      expect(place?.getAttribute('data-line')).toBe(line);
      expect(focused()?.closest('[data-place]')).toBe(place);
    });
  }

  it('opens the crossover of the group at the step in force', async () => {
    const { sheet, place } = await follow(change('crossover', [], 'sides'), 'SiL');
    expect(sheet).toBe('propose/crossovers');
    expect(place?.getAttribute('data-place')).toBe('sides');
    expect(place?.className).toBe('pick');
    expect(focused()).toBe(place?.querySelector('input'));
  });

  it('opens the subs where they are set at the sub itself', async () => {
    const { sheet, place } = await follow(change('own low-pass of the sub', ['Sub 1']), 'Sub 1');
    expect(sheet).toBe('propose/subs');
    expect(place?.textContent).toContain('at the sub itself');
    expect(focused()).toBe(place);
  });

  it('opens the bass at what is said of LFE', async () => {
    const { sheet, place } = await follow(change('LFE level', ['Sub 1']), 'Sub 1');
    expect(sheet).toBe('propose/bass');
    expect(place && deep(place)).toContain(focused());
  });

  for (const setting of ['equaliser and dynamics', 'upmixing'] as const) {
    it(`opens the equaliser in force for ${setting}`, async () => {
      const { sheet, place } = await follow(change(setting, ['FC']), 'FC');
      expect(sheet).toBe('patch/in-force');
      expect(place?.getAttribute('aria-label')).toBe('Equaliser');
      expect(place?.textContent).toContain('upmixing');
    });
  }

  for (const setting of ['wiring', 'polarity'] as const) {
    it(`opens the wiring at the speaker for ${setting} of a main`, async () => {
      const { sheet, place } = await follow(change(setting, ['FR']), 'FR');
      expect(sheet).toBe('patch/wiring');
      expect(place?.textContent).toContain('FR');
      expect(focused()).toBe(place);
    });
  }

  it('pulls nobody back who has moved on', async () => {
    const { place } = await follow(change('trim', ['FR']), 'FR');
    const other = place?.closest('ol')?.querySelector<HTMLInputElement>('input:enabled');
    other?.focus();
    const [sheet] = findAll<HTMLElementTagNameMap['ll-list-sheet']>(document.body, 'll-list-sheet');
    sheet?.requestUpdate();
    await settle(document.body);
    expect(focused()).toBe(other);
    expect(place?.hasAttribute('data-revealed')).toBe(false);
  });
});
