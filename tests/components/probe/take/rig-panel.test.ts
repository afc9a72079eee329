import { describe, expect, it, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/take/rig-panel';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';

expectQuiet();

function benchOn(rig: 'practice' | 'recording' | 'live', name = '5.1'): FakeBench {
  const bench = new FakeBench(name);
  bench.set({ document: { ...bench.state.document, rig } });
  return bench;
}

describe('choosing a rig', () => {
  it('says of each what it needs', async () => {
    const bench = benchOn('practice');
    const panel = await mount('ll-rig-panel', { bench }, 360);
    expect(textOf(panel)).toContain('Needs nothing.');
    for (const [index, needs] of [
      [1, 'Needs any player'],
      [2, 'Microphone'],
      [0, 'Needs nothing.'],
    ] as const) {
      findAll<HTMLInputElement>(panel, 'input[type=radio]')[index]?.click();
      await settle(panel);
      expect(textOf(panel)).toContain(needs);
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
    const panel = await mount('ll-rig-panel', { bench }, 360);
    await userEvent.click(find(find(panel, 'll-recording-rig'), 'button.go'));
    await settle(panel);
    click.mockRestore();
    expect(saved).toEqual(['take.wav', 'take.json']);
    expect(textOf(panel)).toContain('Saved take.wav and take.json.');
  });

  it('hands the chosen file to the bench', async () => {
    const bench = benchOn('recording');
    const panel = await mount('ll-rig-panel', { bench }, 360);
    const input = find<HTMLInputElement>(panel, 'input[type=file]');
    await userEvent.upload(input, new File(['RIFF'], 'invented.wav'));
    expect(bench.calls).toEqual(['importCapture invented.wav']);
  });

  it('takes a dropped file, but none while it is busy', async () => {
    const bench = benchOn('recording');
    const panel = await mount('ll-rig-panel', { bench }, 360);
    const drop = () => {
      const files = new DataTransfer();
      files.items.add(new File(['RIFF'], 'dropped.wav'));
      find(panel, '.zone').dispatchEvent(
        new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }),
      );
    };
    drop();
    expect(bench.calls).toEqual(['importCapture dropped.wav']);
    bench.set({ activity: { kind: 'reading', progress: 0, secondsLeft: null, channels: [] } });
    await settle(panel);
    drop();
    expect(bench.calls).toHaveLength(1);
  });
});

describe('the live rig in short', () => {
  it('says what is chosen, how loud it plays and how many takes it makes', async () => {
    const bench = benchOn('live', '7.1.4');
    const { document } = bench.state;
    const microphone = { id: 'm', name: 'Invented microphone' };
    bench.set({ document: { ...document, live: { ...document.live, microphone } } });
    const panel = await mount('ll-rig-panel', { bench }, 360);
    expect(textOf(panel)).toContain('Output as the system chooses');
    expect(textOf(panel)).toContain('Microphone Invented microphone');
    expect(textOf(panel)).toContain('Test level −30.0 dB');
    expect(textOf(panel)).toContain('12 speakers on 8 outputs: 2 takes, 4 plugs to move.');
  });
});
