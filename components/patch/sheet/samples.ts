import { msg } from '@lit/localize';
import { parseSheet } from '../../../src/system/sheet/parse-sheet';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { trouble, type Trouble } from '../../../src/trouble';

/** The sheets that come with the bench; they describe no existing processor. */
export const sampleSheets = [
  {
    file: 'sample-7.json',
    get name() {
      return msg('Seven outputs and a sub');
    },
    get what() {
      return msg('one free pair');
    },
  },
  {
    file: 'sample-11.json',
    get name() {
      return msg('Eleven outputs and two subs');
    },
    get what() {
      return msg('two pairs with a choice');
    },
  },
  {
    file: 'sample-16.json',
    get name() {
      return msg('Sixteen outputs and four subs');
    },
    get what() {
      return msg('free assignment');
    },
  },
] as const;

/** Fetches one of them from where the page came from. */
export async function loadSample(file: string): Promise<ProcessorSheet | Trouble> {
  const address = new URL(`${import.meta.env.BASE_URL}processors/${file}`, document.baseURI);
  try {
    const answer = await fetch(address);
    if (answer.ok) return parseSheet(await answer.text());
  } catch {
    // Told below, as any other way of not getting it.
  }
  return trouble(
    'failed',
    msg(
      'The sample could not be loaded. Connect to where this page came from, then choose it again.',
    ),
  );
}
