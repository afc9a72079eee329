import { msg, str } from '@lit/localize';
import type { ChannelLabel, Layout } from '../system/channel';
import { isSub } from '../system/channel-names';
import { isTrouble, trouble, type Trouble } from '../trouble';
import { assignOutputs, type OutputAssignment } from './assign-outputs';
import type { PlugMove, Routing, TakePart } from './take-plan';

/** A speaker on an output, among those that share it. */
export interface Slot {
  readonly output: number;
  readonly label: ChannelLabel;
  readonly sharing: readonly ChannelLabel[];
}

/** What sounds in one part of a take. */
export interface Turn {
  readonly sounding: readonly Slot[];
  /** Its number among the turns of the same outputs, from 0. */
  readonly number: number;
  /** Whether a repeat of the reference speaker alone is played in it. */
  readonly isHome: boolean;
  /** Speakers that play along with others and must all be on; null where that does not matter. */
  readonly allOn: readonly ChannelLabel[] | null;
}

/** The one turn of a rig in which every speaker has an output of its own. */
export function turnOfAll({ channels }: Layout): Turn {
  const sounding = channels.map(({ label }, output) => ({ output, label, sharing: [label] }));
  return { sounding, number: 0, isHome: true, allOn: null };
}

/**
 * What sounds on the outputs, turn after turn; the reference always does where it has its own.
 * Through a processor all subs are on its LFE: each sounds alone first, then the mains with all on.
 */
export function turnsOf(
  layout: Layout,
  routing: Routing,
  reference: ChannelLabel,
  throughLfe: boolean,
): Turn[] | Trouble {
  if (routing.outputs < 1) return noOutputs();
  const assignment = assignOutputs(layout, throughLfe ? withSubsOnLfe(layout, routing) : routing);
  if (isTrouble(assignment)) return assignment;
  const shared = sharedWithReference(assignment, reference, routing.outputs);
  if (shared) return shared;
  const subs = throughLfe ? subsTogether(assignment, reference) : null;
  if (!subs) return turnsOfAll(assignment, reference);
  const own = ownSlot(assignment, reference);
  const alone = subs.labels.map((label, number): Turn => {
    const slot = { output: subs.output, label, sharing: subs.labels };
    return { sounding: [...own, slot], number, isHome: false, allOn: null };
  });
  const others = new Map(
    [...assignment].map(([output, sharing]) => [
      output,
      output === subs.output ? sharing.filter((label) => !isSub(label)) : sharing,
    ]),
  );
  const mains = turnsOfAll(others, reference).map((turn) => ({ ...turn, allOn: subs.labels }));
  return [...alone, ...mains];
}

function turnsOfAll(assignment: OutputAssignment, reference: ChannelLabel): Turn[] {
  const turns = Math.max(...[...assignment.values()].map((sharing) => sharing.length));
  return Array.from({ length: turns }, (_, number) => ({
    number,
    isHome: number === 0,
    allOn: null,
    sounding: [...assignment].flatMap(([output, sharing]) => {
      const stays = sharing.length === 1 && sharing[0] === reference;
      const label = sharing[stays ? 0 : number];
      return label === undefined ? [] : [{ output, label, sharing }];
    }),
  }));
}

/** Subs that share an output, where they share it with no reference speaker. */
function subsTogether(assignment: OutputAssignment, reference: ChannelLabel) {
  for (const [output, sharing] of assignment) {
    const labels = sharing.filter(isSub);
    if (labels.length > 1 && !sharing.includes(reference)) return { output, labels };
  }
  return null;
}

function ownSlot(assignment: OutputAssignment, reference: ChannelLabel): Slot[] {
  return [...assignment].flatMap(([output, sharing]) =>
    sharing.includes(reference) ? [{ output, label: reference, sharing }] : [],
  );
}

/** Every sub on the output of LFE; on that of the first sub where none is named. */
function withSubsOnLfe(layout: Layout, routing: Routing): Routing {
  const subs = layout.channels.flatMap(({ label }) => (isSub(label) ? [label] : []));
  const output = routing.lfeOutput ?? outputOfFirst(layout, routing, subs);
  if (output === null) return routing;
  const onLfe = Object.fromEntries(subs.map((label) => [label, output]));
  return { ...routing, routes: { ...routing.routes, ...onLfe } };
}

function outputOfFirst(
  layout: Layout,
  routing: Routing,
  [first]: readonly ChannelLabel[],
): number | null {
  const assignment = assignOutputs(layout, routing);
  if (isTrouble(assignment) || first === undefined) return null;
  return [...assignment].find(([, sharing]) => sharing.includes(first))?.[0] ?? null;
}

/** Plugs and switches for a turn; in the first, plugs stand as the layout's wiring has them. */
export function changesFor(
  sounding: readonly Slot[],
  turn: number,
): Pick<TakePart, 'moves' | 'switchOff' | 'switchOn'> {
  const moves: PlugMove[] = [];
  const switchOff: ChannelLabel[] = [];
  const switchOn: ChannelLabel[] = [];
  for (const { output, label, sharing } of sounding) {
    if (sharing.length === 1) continue;
    const before = sharing[turn - 1] ?? null;
    // Subs on one output stay plugged in together; a main needs the plug, and so does what follows it.
    const stays = isSub(label) && (before === null || isSub(before));
    if (turn > 0 && !stays) moves.push({ output, from: before, to: label });
    if (!isSub(label)) continue;
    switchOff.push(...sharing.filter((other) => isSub(other) && other !== label));
    if (turn > 0) switchOn.push(label);
  }
  return { moves, switchOff, switchOn };
}

function noOutputs(): Trouble {
  return trouble(
    'no-output',
    msg(
      'This output device has no channel to play on. Choose another output, or use the recording instead.',
    ),
  );
}

/** With more than one output, nothing may take the plug of the speaker that plays the marks. */
function sharedWithReference(
  assignment: OutputAssignment,
  reference: ChannelLabel,
  outputs: number,
): Trouble | null {
  if (outputs === 1) return null;
  for (const [output, sharing] of assignment) {
    const other = sharing.find((label) => label !== reference);
    if (!sharing.includes(reference) || other === undefined) continue;
    return trouble(
      'no-output',
      msg(
        str`Output ${output + 1} is to feed ${reference} and ${other}, but ${reference} plays the timing marks of every take and needs an output of its own. Give ${other} another output.`,
      ),
    );
  }
  return null;
}
