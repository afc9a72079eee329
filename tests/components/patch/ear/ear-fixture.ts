import { userEvent } from 'vitest/browser';
import '../../../../components/theme/base.css';
import '../../../../components/patch/ear/ear-sheet';
import { find, mount, settle } from '../../mount';
import { button, sampleSheet } from '../samples';
import { NoisyBench } from './noisy-bench';

/** The ear check of a layout on the sample of eleven outputs, or without a sheet, and ways to use it. */
export async function earSheet(layout = '5.2.4', sheeted = true) {
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
