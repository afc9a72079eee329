import { msg, str } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import type { BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { planTake } from '../../../src/take/plan-take';
import type { Routing, TakePart, TakePlan } from '../../../src/take/take-plan';
import { isTrouble, type Trouble } from '../../../src/trouble';

/** Channels that are reckoned with before the browser has told how many there are. */
export const assumedOutputs = 8;

/** The routing as the tuner set it, on the outputs the browser told of. */
export function routingOf({ document, abilities }: BenchState): Routing {
  const outputs = abilities?.kind === 'live' ? abilities.outputs : assumedOutputs;
  const { routes, lfeOutput } = document.live;
  return { outputs, routes, lfeOutput };
}

interface Planned {
  readonly key: readonly unknown[];
  readonly plan: TakePlan | Trouble;
}

let newest: Planned | null = null;

/** The takes the next position needs, planned again only when what they depend on has changed. */
export function plannedTakes(state: BenchState): TakePlan | Trouble {
  const { layout, document } = state;
  const live = document.rig === 'live';
  const { outputs, routes, lfeOutput } = routingOf(state);
  const key = [
    localeInForce(),
    layout,
    document.take,
    live,
    ...(live ? [outputs, routes, lfeOutput] : []),
  ];
  if (newest && newest.key.every((value, index) => value === key[index])) {
    if (newest.key.length === key.length) return newest.plan;
  }
  const plan = planTake(layout, document.take, live ? { outputs, routes, lfeOutput } : null);
  newest = { key, plan };
  return plan;
}

/** "12 speakers on 8 outputs: 2 takes, 4 plugs to move." A trouble says why it cannot be. */
export function previewSentence(state: BenchState): string {
  const plan = plannedTakes(state);
  if (isTrouble(plan)) return plan.sentence;
  const speakers = counted(state.layout.channels.length, 'speaker');
  const outputs = counted(routingOf(state).outputs, 'output');
  const moves = plan.parts.reduce((sum, part) => sum + part.moves.length, 0);
  const switched = new Set(plan.parts.flatMap(({ switchOff }) => switchOff)).size;
  const wants = [
    counted(plan.parts.length, 'take'),
    moves === 0 ? msg('no plug to move') : msg(str`${counted(moves, msg('plug'))} to move`),
    ...(switched > 0 ? [msg(str`${counted(switched, msg('speaker'))} to switch off in turn`)] : []),
  ];
  return msg(str`${speakers} on ${outputs}: ${wants.join(', ')}.`);
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** What one output plays in one take of the plan. */
export interface PlugCell {
  readonly channel: ChannelLabel | null;
  /** Its plug is moved before this take. */
  readonly moved: boolean;
}

/** Rows of the plug plan: every output in use, and what it plays in each take. */
export function plugRows(parts: readonly TakePart[]): { output: number; cells: PlugCell[] }[] {
  const outputs = new Set(parts.flatMap(({ routes }) => Object.values(routes)));
  return [...outputs]
    .sort((a, b) => a - b)
    .map((output) => ({
      output,
      cells: parts.map((part) => ({
        channel: playsOn(part, output),
        moved: part.moves.some((move) => move.output === output),
      })),
    }));
}

/** What sounds on an output in a part: the speaker with a sweep in it, else whatever is routed. */
function playsOn({ schedule, routes, switchOff }: TakePart, output: number): ChannelLabel | null {
  const routed = schedule.channels.filter((label) => routes[label] === output);
  const others = Object.keys(routes).filter(
    (label): label is ChannelLabel => routes[label as ChannelLabel] === output,
  );
  const on = [...routed, ...others].filter((label) => !switchOff.includes(label));
  const swept = on.find((label) => schedule.segments.some(({ channel }) => channel === label));
  return swept ?? on[0] ?? null;
}
