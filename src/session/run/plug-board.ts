import type { ChannelLabel } from '../../system/channel';
import type { TakePart, TakePlan } from '../../take/take-plan';

/** What has to be done before a part plays; outputs count from 0. */
export interface PlugWork {
  readonly moves: readonly {
    readonly output: number;
    readonly from: ChannelLabel | null;
    readonly to: ChannelLabel;
  }[];
  /** Plugs that may or may not stand there already. */
  readonly look: readonly { readonly output: number; readonly speaker: ChannelLabel }[];
  readonly switchOff: readonly ChannelLabel[];
  readonly switchOn: readonly ChannelLabel[];
}

/** Which plugs were moved and which speakers switched off, so that later takes put them back. */
export interface PlugBoard {
  /** Nothing is known of the plugs that this plan moves, such as after a reload. */
  doubt(plan: TakePlan): void;
  /** What this part needs; null when everything stands as it should. */
  workFor(part: TakePart): PlugWork | null;
  /** The work was done. */
  done(work: PlugWork): void;
  /** The work may have been done, wholly, in part or not at all. */
  interrupted(work: PlugWork): void;
}

/** A board on which every plug stands as the first part of a plan expects it. */
export function createPlugBoard(): PlugBoard {
  /** What outputs feed whose plug was ever moved; null when that is not known. */
  const feeds = new Map<number, ChannelLabel | null>();
  const off = new Set<ChannelLabel>();
  /** Those that are known to be on, because the tuner was told to switch them on. */
  const on = new Set<ChannelLabel>();
  const turn = (speaker: ChannelLabel, to: Set<ChannelLabel>, from: Set<ChannelLabel>): void => {
    from.delete(speaker);
    to.add(speaker);
  };
  return {
    doubt(plan) {
      for (const { output } of plan.parts.flatMap((part) => part.moves)) {
        if (!feeds.has(output)) feeds.set(output, null);
      }
    },
    workFor(part) {
      const moves: PlugWork['moves'][number][] = [];
      const look: PlugWork['look'][number][] = [];
      for (const { speaker, output } of routesOf(part)) {
        const planned = part.moves.find((move) => move.output === output && move.to === speaker);
        const now = feeds.get(output);
        if (now === speaker) continue;
        if (now === null) look.push({ output, speaker });
        else if (now) moves.push({ output, from: now, to: speaker });
        else if (planned) moves.push(planned);
      }
      const switchOff = part.switchOff;
      const wasOff = part.schedule.channels.filter((speaker) => off.has(speaker));
      const unsure = (part.allOn ?? []).filter((speaker) => !on.has(speaker));
      const switchOn = [...new Set([...part.switchOn, ...wasOff, ...unsure])];
      const nothing = [moves, look, switchOff, switchOn].every(({ length }) => length === 0);
      return nothing ? null : { moves, look, switchOff, switchOn };
    },
    done({ moves, look, switchOff, switchOn }) {
      for (const { output, to } of moves) feeds.set(output, to);
      for (const { output, speaker } of look) feeds.set(output, speaker);
      for (const speaker of switchOff) turn(speaker, off, on);
      for (const speaker of switchOn) turn(speaker, on, off);
    },
    interrupted({ moves, look, switchOff, switchOn }) {
      for (const { output } of [...moves, ...look]) feeds.set(output, null);
      for (const speaker of switchOff) turn(speaker, off, on);
      for (const speaker of switchOn) on.delete(speaker);
    },
  };
}

function routesOf(part: TakePart): { speaker: ChannelLabel; output: number }[] {
  return part.schedule.channels.flatMap((speaker) => {
    const output = part.routes[speaker];
    return output === undefined ? [] : [{ speaker, output }];
  });
}
