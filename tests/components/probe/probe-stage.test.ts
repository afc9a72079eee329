import { beforeEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/probe/probe-stage';
import { benchWith } from '../bench-of';
import { FakeBench } from '../fake-bench';
import { emptyReading, inventedReadings, layout19, layout524, layoutOne } from '../fixtures';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

const buttonNamed = (root: Element, name: RegExp) => {
  const found = findAll<HTMLButtonElement>(root, 'button').find((one) =>
    name.test(plain(one.textContent ?? '')),
  );
  if (!found) throw new RangeError(`no button ${name.source}`);
  return found;
};

beforeEach(() => {
  sessionStorage.clear();
  location.hash = '#probe';
});

/** Clicks a link and waits until the address has followed. */
async function follow(link: HTMLAnchorElement | undefined): Promise<void> {
  const followed = new Promise((resolve) => {
    window.addEventListener('hashchange', resolve, { once: true });
  });
  link?.click();
  await followed;
}

describe('the Probe stage', () => {
  it('runs a take in the practice room with one click, and says that it is simulated', async () => {
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-probe', { bench }, 1100);
    expect(textOf(stage)).toContain('simulated');
    expect(textOf(stage)).toMatch(/The take lasts \d+ s/);
    await userEvent.click(buttonNamed(stage, /^Run the take$/));
    expect(bench.calls).toEqual(['startTake']);
  });

  it('keeps another practice room in the document', async () => {
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-probe', { bench });
    const field = find(find(stage, 'll-practice-rig'), 'll-number') as HTMLElement;
    field.dispatchEvent(new CustomEvent('ll-number', { detail: 12.4 }));
    expect(bench.state.document.practice.seed).toBe(12);
  });

  it('shows progress and stops on demand while a take runs', async () => {
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-probe', { bench });
    bench.set({
      activity: {
        kind: 'playing',
        channel: 'FC',
        part: { number: 1, of: 1 },
        play: { phase: 'playing', progress: 0.25, secondsLeft: 40, position: 1 },
      },
    });
    await settle(stage);
    expect(textOf(stage)).toContain('25 % of the take');
    expect(find(stage, '[role=progressbar]').ariaValueNow).toBe('25');
    expect(findAll(stage, 'll-rig-panel')).toEqual([]);
    await userEvent.click(buttonNamed(stage, /^Stop this take$/));
    expect(bench.calls).toEqual(['stop']);
  });

  it('fills its lanes as readings arrive', async () => {
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-probe', { bench });
    const { channels } = inventedReadings(layout524);
    for (const count of [1, 4, 11]) {
      bench.set({
        activity: {
          kind: 'reading',
          progress: count / 11,
          secondsLeft: 2,
          channels: channels.slice(0, count),
        },
      });
      await settle(stage);
      expect(findAll(stage, '[data-stage=read]')).toHaveLength(count);
      expect(findAll(stage, '[data-stage=reading]')).toHaveLength(count < 11 ? 1 : 0);
    }
  });

  it('says what the take found, speaker by speaker, and runs again', async () => {
    const readings = inventedReadings(layout524, {
      clock: {
        skewPpm: -43.2,
        skewInterval: [-43.5, -42.9],
        faults: [{ kind: 'lost', samples: 511.97, channel: 'SiL' }],
      },
      capture: { clipped: ['FR'], noiseFloorDb: -71.4, peakDb: 0 },
    });
    const channels = readings.channels.map((reading) =>
      reading.channel === 'SiL'
        ? { ...reading, faults: [{ kind: 'lost' as const, sentence: 'SiL lost 512 samples.' }] }
        : reading,
    );
    const bench = benchWith(layout524, { ...readings, channels });
    const stage = await mount('ll-probe', { bench }, 1100);
    const facts = plain(find(stage, 'll-take-facts').shadowRoot?.textContent ?? '');
    expect(facts).toContain('−43.2 ppm');
    expect(facts).toContain('−43.5 to −42.9');
    expect(facts).toContain('512 samples in SiL');
    expect(facts).toMatch(/Clipped FR/);
    expect(facts).toContain('−71.4 dBFS');
    expect(textOf(find(stage, 'll-take-notes'))).toContain('SiL lost 512 samples.');
    expect(find(stage, 'h1').textContent).toBe('SiL must be taken again');
    await userEvent.click(buttonNamed(stage, /^Run the take again$/));
    expect(bench.calls).toEqual(['startTake']);
  });

  it('passes on which speaker was picked', async () => {
    const stage = await mount('ll-probe', {
      bench: benchWith(layout524, inventedReadings(layout524)),
    });
    const picked: unknown[] = [];
    document.body.addEventListener('ll-select', (event) => picked.push(event.detail), {
      once: true,
    });
    find(stage, '[role=listbox]').focus();
    await userEvent.keyboard('{ArrowDown}');
    expect(picked).toEqual(['FL']);
  });

  it('walks from sheet to sheet by its links, and names the sheet in the address', async () => {
    const stage = await mount('ll-probe', { bench: new FakeBench('5.2.4') }, 1100);
    const links = findAll<HTMLAnchorElement>(find(stage, 'll-sheet-nav'), 'a');
    expect(links.map((link) => plain(link.textContent ?? ''))).toEqual([
      'Connect',
      'Microphone',
      'Level',
      'Take',
      'Noise',
      'Inspect',
    ]);
    expect(find(find(stage, 'll-sheet-nav'), '[aria-current]').textContent).toContain('Take');
    for (const [index, element] of [
      [2, 'll-level-sheet'],
      [4, 'll-noise-sheet'],
      [1, 'll-microphone-sheet'],
      [0, 'll-connect-sheet'],
    ] as const) {
      await follow(links[index]);
      await settle(stage);
      expect(findAll(stage, element)).toHaveLength(1);
      expect(findAll(stage, 'll-take-sheet')).toEqual([]);
    }
    expect(location.hash).toBe('#probe/connect');
  });

  it('comes back to the sheet it was left on', async () => {
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-probe', { bench });
    await follow(findAll<HTMLAnchorElement>(find(stage, 'll-sheet-nav'), 'a')[2]);
    stage.remove();
    location.hash = '#probe';
    const again = await mount('ll-probe', { bench });
    expect(findAll(again, 'll-level-sheet')).toHaveLength(1);
  });

  it('begins at the wires when speakers are reached live and nothing was taken', async () => {
    const bench = new FakeBench('5.2.4');
    bench.set({ document: { ...bench.state.document, rig: 'live' } });
    const stage = await mount('ll-probe', { bench });
    expect(findAll(stage, 'll-connect-sheet')).toHaveLength(1);
  });

  it('says on every sheet what runs on another, and shows the prompt on all', async () => {
    location.hash = '#probe/level';
    const bench = new FakeBench('5.2.4');
    const stage = await mount('ll-probe', { bench });
    bench.set({
      activity: {
        kind: 'playing',
        channel: 'FC',
        part: { number: 1, of: 2 },
        play: { phase: 'playing', progress: 0.25, secondsLeft: 40, position: 1 },
      },
    });
    await settle(stage);
    expect(textOf(stage)).toMatch(/Playing FC, simulated ?\. Go to Take/);
    bench.set({
      activity: { kind: 'waiting', prompt: { title: 'Move 2 plugs', steps: ['One.'] } },
    });
    await settle(stage);
    expect(textOf(stage)).toContain('Move 2 plugs');
  });

  for (const [name, layout] of [
    ['one speaker', layoutOne],
    ['nineteen speakers', layout19],
  ] as const) {
    it(`shows ${name}, with and without numbers, at every width`, async () => {
      const whole = inventedReadings(layout);
      const empty = { ...whole, channels: layout.channels.map(({ label }) => emptyReading(label)) };
      for (const readings of [whole, empty]) {
        for (const width of [366, 720, 1080]) {
          const stage = await mount('ll-probe', { bench: benchWith(layout, readings) }, width);
          expect(notNumbers(stage)).toEqual([]);
          expect(stage.scrollWidth).toBeLessThanOrEqual(width);
        }
      }
    });
  }
});
