import { layoutFromName } from '../system/layout';
import type { ChannelLabel } from '../system/channel';
import { wireLayout } from '../system/wiring/wire-layout';
import { isTrouble } from '../trouble';
import { forgetAnswers } from '../wirecheck/ear-check';
import type { SessionDocument } from './document';

/**
 * The document without what was heard of a wiring that is no more: with other speakers or another
 * rig, walks are forgotten, and of the ear check the answers on channels whose output has changed.
 */
export function followWiring(before: SessionDocument, after: SessionDocument): SessionDocument {
  if (after === before || after.id !== before.id) return after;
  if (otherRoom(before, after)) return { ...after, earAnswers: {}, walk: [], seatSounds: [] };
  if (before.layout === after.layout && before.sheet === after.sheet) return after;
  const [was, is] = [outputsOf(before), outputsOf(after)];
  const labels = [...new Set([...was.keys(), ...is.keys()])];
  const changed = labels.filter((label) => was.get(label) !== is.get(label));
  if (changed.length === 0) return after;
  return {
    ...after,
    earAnswers: forgetAnswers(after.earAnswers, changed),
    walk: [],
    seatSounds: [],
  };
}

function otherRoom(before: SessionDocument, after: SessionDocument): boolean {
  if (before.rig !== after.rig) return true;
  if (after.rig === 'live' && before.live.routes !== after.live.routes) return true;
  const [was, is] = [before.practice, after.practice];
  return after.rig === 'practice' && (was.seed !== is.seed || was.hidden !== is.hidden);
}

/** What feeds each speaker: its output, or, while no processor is chosen, itself. */
function outputsOf({ layout: name, sheet }: SessionDocument): Map<ChannelLabel, string> {
  const layout = layoutFromName(name);
  if (isTrouble(layout)) return new Map();
  const wiring = sheet && wireLayout(layout, sheet);
  const outputs = new Map<ChannelLabel, string>(layout.channels.map(({ label }) => [label, '']));
  if (wiring?.wired) for (const { channel, output } of wiring.outputs) outputs.set(channel, output);
  return outputs;
}
