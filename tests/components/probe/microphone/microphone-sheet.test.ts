import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/probe/microphone/microphone-sheet';
import {
  calibrationSentence,
  otherMicrophone,
} from '../../../../components/probe/microphone/sound-level-words';
import type { MicrophoneSetup } from '../../../../src/microphone/calibration';
import { FakeBench } from '../../fake-bench';
import { find, findAll, mount, notNumbers, plain, settle, textOf } from '../../mount';
import { expectQuiet } from '../../quiet';

expectQuiet();

const calibration = {
  name: 'invented-90.txt',
  hz: [20, 100, 1000, 10_000, 20_000],
  db: [-2, -0.5, 0, 3, 9.5],
  phaseDegrees: null,
};
const soundLevel = {
  offsetDb: 121.42,
  how: 'calibrator',
  at: '2025-01-01T14:05:00',
  microphone: 'Invented microphone',
} as const;

function benchWithMicrophone(microphone: Partial<MicrophoneSetup>): FakeBench {
  const bench = new FakeBench('5.1');
  const { document } = bench.state;
  bench.set({
    document: {
      ...document,
      rig: 'live',
      microphone: { ...document.microphone, ...microphone },
    },
  });
  return bench;
}

describe('the calibration file', () => {
  it('is handed to the bench, chosen or dropped', async () => {
    const bench = benchWithMicrophone({});
    const sheet = await mount('ll-microphone-sheet', { bench });
    await userEvent.upload(find(sheet, 'input[type=file]'), new File(['20 0'], 'chosen.txt'));
    const files = new DataTransfer();
    files.items.add(new File(['20 0'], 'dropped.cal'));
    find(sheet, '.zone').dispatchEvent(
      new DragEvent('drop', { dataTransfer: files, bubbles: true, cancelable: true }),
    );
    expect(bench.calls).toEqual(['importCalibration chosen.txt', 'importCalibration dropped.cal']);
  });

  it('is shown with its range and its curve, and taken away again', async () => {
    const bench = benchWithMicrophone({ calibration });
    const sheet = await mount('ll-microphone-sheet', { bench });
    expect(textOf(sheet)).toMatch(/invented-90\.txt From 20 Hz to 20 kHz Rows 5 Phase not given/);
    expect(find(sheet, '.curve').getAttribute('d')).toMatch(/^M/);
    expect(notNumbers(sheet)).toEqual([]);
    find<HTMLElement>(find(sheet, 'll-calibration-curve'), 'summary').click();
    await settle(sheet);
    const rows = findAll(sheet, 'tbody tr').map((row) => textOf(row));
    expect(rows).toEqual(['20.0 \u22122.0', '100 \u22120.5', '1000 0.0', '10000 3.0', '20000 9.5']);
    const remove = findAll(sheet, 'button').find(
      (one) => plain(one.textContent ?? '') === 'Remove this file',
    );
    remove?.click();
    expect(bench.state.document.microphone.calibration).toBeNull();
  });
});

describe('the orientation', () => {
  it('is noted', async () => {
    const bench = benchWithMicrophone({});
    const sheet = await mount('ll-microphone-sheet', { bench });
    findAll<HTMLInputElement>(find(sheet, 'll-orientation-choice'), 'input')[0]?.click();
    expect(bench.state.document.microphone.orientation).toBe('up');
  });
});

describe('the sound level', () => {
  const panelOf = (sheet: Element) => find(sheet, 'll-sound-level-calibration');

  it('is calibrated by a calibrator of 94 or 114 dB', async () => {
    const bench = benchWithMicrophone({});
    const sheet = await mount('ll-microphone-sheet', { bench });
    const panel = panelOf(sheet);
    await userEvent.click(find(panel, 'button'));
    findAll<HTMLInputElement>(panel, 'input[type=radio]')[1]?.click();
    await settle(sheet);
    await userEvent.click(find(panel, 'button'));
    expect(bench.calls).toEqual([
      'calibrateSoundLevel 94 dB, calibrator',
      'calibrateSoundLevel 114 dB, calibrator',
    ]);
  });

  it('is calibrated by what a meter shows, typed with a comma; nonsense changes nothing', async () => {
    const bench = benchWithMicrophone({});
    const sheet = await mount('ll-microphone-sheet', { bench });
    const panel = panelOf(sheet);
    findAll<HTMLInputElement>(panel, 'input[type=radio]')[2]?.click();
    await settle(sheet);
    const field = find<HTMLInputElement>(find(panel, 'll-number'), 'input');
    await userEvent.fill(field, '82,4');
    await userEvent.keyboard('{Enter}');
    await userEvent.fill(field, '300');
    await userEvent.keyboard('{Enter}');
    await settle(sheet);
    expect(textOf(panel)).toContain('The meter shows lies between 30 and 140 dB');
    await userEvent.click(find(panel, 'button'));
    expect(bench.calls).toEqual(['calibrateSoundLevel 82.4 dB, sound level meter']);
  });

  it('says how and when it was calibrated, and forgets it on demand', async () => {
    const bench = benchWithMicrophone({ soundLevel });
    const sheet = await mount('ll-microphone-sheet', { bench });
    expect(plain(calibrationSentence(soundLevel))).toBe(
      'Calibrated with a calibrator on 1 January 2025, 14:05, with Invented microphone: full scale is 121.4 dB sound pressure level.',
    );
    expect(textOf(sheet)).toContain('Calibrated with a calibrator on 1 January 2025');
    findAll(panelOf(sheet), 'button')[1]?.click();
    expect(bench.state.document.microphone.soundLevel).toBeNull();
  });

  it('warns when another microphone is chosen than it was calibrated with', () => {
    const bench = benchWithMicrophone({ soundLevel });
    expect(otherMicrophone(bench.state)).toBeNull();
    const { document } = bench.state;
    const choose = (name: string) =>
      bench.set({
        document: { ...document, live: { ...document.live, microphone: { id: 'x', name } } },
      });
    choose('Built-in');
    expect(otherMicrophone(bench.state)).toContain('with Invented microphone, and Built-in');
    choose('Invented microphone');
    expect(otherMicrophone(bench.state)).toBeNull();
  });

  it('needs a microphone at this computer', async () => {
    const bench = benchWithMicrophone({});
    bench.setRig('recording');
    const sheet = await mount('ll-microphone-sheet', { bench }, 366);
    expect(find<HTMLButtonElement>(panelOf(sheet), 'button').disabled).toBe(true);
    expect(textOf(sheet)).toContain('choose Live under Connect');
    expect(sheet.scrollWidth).toBeLessThanOrEqual(366);
  });
});
