import { parseSheet } from '../../../src/system/sheet/parse-sheet';
import type { ChannelLabel } from '../../../src/system/channel';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { isTrouble } from '../../../src/trouble';
import type { WalkStop } from '../../../src/wirecheck/walk';
import { FakeBench } from '../fake-bench';
import { findAll, plain } from '../mount';

/** The text of one of the samples that the bench comes with. */
export async function sampleText(outputs: 7 | 11 | 16): Promise<string> {
  const answer = await fetch(`/processors/sample-${outputs}.json`);
  if (!answer.ok) throw new RangeError(`no sample of ${outputs} outputs: ${answer.status}`);
  return answer.text();
}

export async function sampleSheet(outputs: 7 | 11 | 16): Promise<ProcessorSheet> {
  const sheet = parseSheet(await sampleText(outputs));
  if (isTrouble(sheet)) throw new RangeError(sheet.sentence);
  return sheet;
}

/** A bench whose session has one of the samples. */
export async function benchWithSheet(name: string, outputs: 7 | 11 | 16): Promise<FakeBench> {
  const bench = new FakeBench(name);
  const sheet = await sampleSheet(outputs);
  bench.set({ document: { ...bench.state.document, sheet } });
  return bench;
}

/** The button that says this, through every shadow. */
export function button(root: Element, words: string): HTMLButtonElement {
  const all = findAll<HTMLButtonElement>(root, 'button');
  const found = all.find((one) => plain(one.textContent ?? '').startsWith(words));
  if (!found) throw new RangeError(`no button says ${words}`);
  return found;
}

/** Stops of a walk at which each channel is loud and early at the speaker it is wired to. */
export function walkStops(
  labels: readonly ChannelLabel[],
  wiring: Partial<Record<ChannelLabel, ChannelLabel>> = {},
): WalkStop[] {
  return labels.map((speaker) => ({
    speaker,
    sounds: labels.map((channel) => {
      const near = (wiring[channel] ?? channel) === speaker;
      return {
        channel,
        levelDb: near ? -25 : -42,
        lowDb: near ? -30 : -44,
        arrivalSeconds: 0.3 + (near ? 0.001 : 0.008),
        polarity: 'normal',
      };
    }),
  }));
}
