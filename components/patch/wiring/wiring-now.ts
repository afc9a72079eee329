import { LocaleMap } from '../../../src/locale/locale-map';
import type { BenchState } from '../../../src/session/bench';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { wireLayout } from '../../../src/system/wiring/wire-layout';
import type { Wiring } from '../../../src/system/wiring/wiring';

const solved = new LocaleMap<ProcessorSheet, Map<string, Wiring>>();

/** How the layout goes on the outputs of a sheet; solved once for each pair of them. */
export function wiringOf(layout: Layout, sheet: ProcessorSheet): Wiring {
  const known = solved.get(sheet) ?? new Map<string, Wiring>();
  solved.set(sheet, known);
  const wiring = known.get(layout.name) ?? wireLayout(layout, sheet);
  known.set(layout.name, wiring);
  return wiring;
}

/** The wiring of the session as it is now; null without a processor sheet. */
export function wiringNow({ layout, document }: BenchState): Wiring | null {
  return document.sheet && wiringOf(layout, document.sheet);
}

/** The speakers in wiring order; in the order of a take while no wiring is known. */
export function wiringOrder(state: BenchState): readonly ChannelLabel[] {
  const wiring = wiringNow(state);
  return wiring?.wired
    ? wiring.outputs.map(({ channel }) => channel)
    : state.layout.channels.map(({ label }) => label);
}

/** Name of the processor's output that feeds a speaker; null while no wiring is known. */
export function outputNamer(state: BenchState): (channel: ChannelLabel) => string | null {
  const wiring = wiringNow(state);
  return (channel) =>
    (wiring?.wired ? wiring.outputs.find((one) => one.channel === channel)?.name : null) ?? null;
}
