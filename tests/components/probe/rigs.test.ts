import { describe, expect, it, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/probe/rig-picker';
import type { RigAbilities } from '../../../src/rig/port';
import { FakeBench } from '../fake-bench';
import { find, findAll, mount, plain, settle, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

function benchOn(rig: 'practice' | 'recording' | 'live', name = '5.1'): FakeBench {
  const bench = new FakeBench(name);
  bench.set({ document: { ...bench.state.document, rig } });
  return bench;
}

describe('choosing a rig', () => {
  it('says of each what it needs', async () => {
    const bench = benchOn('practice');
    const picker = await mount('ll-rig-picker', { bench }, 360);
    expect(textOf(picker)).toContain('Needs nothing.');
    for (const [index, needs] of [
      [1, 'Needs any player'],
      [2, 'Needs this computer’s output'],
      [0, 'Needs nothing.'],
    ] as const) {
      findAll<HTMLInputElement>(picker, 'input[type=radio]')[index]?.click();
      await settle(picker);
      expect(textOf(picker)).toContain(needs);
    }
    expect(bench.calls).toEqual(['setRig recording', 'setRig live', 'setRig practice']);
  });
});

describe('the recording', () => {
  it('saves the take as the files the bench gives, under their names', async () => {
    const bench = Object.assign(benchOn('recording'), {
      saveStimulus: () =>
        Promise.resolve([
          { name: 'take.wav', blob: new Blob(['RIFF']) },
          { name: 'take.json', blob: new Blob(['{}']) },
        ]),
    });
    const saved: string[] = [];
    const click = vi.spyOn(HTMLAnchorElement.prototype, 'click').mockImplementation(function (
      this: HTMLAnchorElement,
    ) {
      saved.push(this.download);
    });
    const picker = await mount('ll-rig-picker', { bench }, 360);
    await userEvent.click(find(find(picker, 'll-recording-rig'), 'button.go'));
    await settle(picker);
    click.mockRestore();
    expect(saved).toEqual(['take.wav', 'take.json']);
    expect(textOf(picker)).toContain('Saved take.wav and take.json.');
  });

  it('hands the chosen file to the bench', async () => {
    const bench = benchOn('recording');
    const picker = await mount('ll-rig-picker', { bench }, 360);
    const input = find<HTMLInputElement>(picker, 'input[type=file]');
    await userEvent.upload(input, new File(['RIFF'], 'invented.wav'));
    expect(bench.calls).toEqual(['importCapture invented.wav']);
  });

  it('takes a dropped file, but none while it is busy', async () => {
    const bench = benchOn('recording');
    const picker = await mount('ll-rig-picker', { bench }, 360);
    const drop = () => {
      const files = new DataTransfer();
      files.items.add(new File(['RIFF'], 'dropped.wav'));
      find(picker, '.zone').dispatchEvent(
        new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }),
      );
    };
    drop();
    expect(bench.calls).toEqual(['importCapture dropped.wav']);
    bench.set({ activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } });
    await settle(picker);
    drop();
    expect(bench.calls).toHaveLength(1);
  });
});

describe('the live rig', () => {
  const abilities: RigAbilities = {
    kind: 'live',
    name: 'invented interface',
    simulated: false,
    outputs: 6,
    inputs: 2,
    sampleRate: 44_100,
    unknown: ['latency'],
  };

  it('starts quiet, moves by 6 dB and never passes full scale', async () => {
    const bench = benchOn('live');
    const picker = await mount('ll-rig-picker', { bench }, 360);
    const [quieter, louder] = findAll<HTMLButtonElement>(find(picker, 'll-test-level'), '.ghost');
    const level = () => bench.state.document.live.gainDb;
    expect(level()).toBe(-30);
    quieter?.click();
    expect(level()).toBe(-36);
    for (let i = 0; i < 9; i++) {
      louder?.click();
      await settle(picker);
    }
    expect(level()).toBe(0);
    expect(louder?.disabled).toBe(true);
    expect(textOf(picker)).toContain('leave the room or wear hearing protection');
  });

  it('says what the browser told of the output, and what it did not', async () => {
    const bench = benchOn('live', '5.1');
    bench.set({ abilities });
    const picker = await mount('ll-rig-picker', { bench }, 360);
    const facts = plain(
      findAll(find(picker, 'll-live-rig'), 'dl')
        .map((one) => one.textContent)
        .join(' '),
    );
    expect(facts).toMatch(/invented interface/);
    expect(facts).toMatch(/Sample rate\s*44\.1 kHz/);
    expect(facts).toMatch(/Not told\s*latency/);
  });

  it('warns when the plan has more speakers than the output has channels', async () => {
    const bench = benchOn('live', '5.2.4');
    const picker = await mount('ll-rig-picker', { bench }, 360);
    expect(textOf(picker)).toContain('The plan has 11 speakers');
    expect(textOf(picker)).toContain('at most 8');
    bench.set({ abilities });
    await settle(picker);
    expect(textOf(picker)).toMatch(/this output carries 6/);
  });

  it('cautions where it applies', async () => {
    const picker = await mount('ll-rig-picker', { bench: benchOn('live') }, 360);
    for (const words of ['Start quiet', 'amplifiers off before moving plugs']) {
      expect(textOf(picker)).toContain(words);
    }
  });
});
