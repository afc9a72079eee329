import type { SmoothingKind } from '../../../dsp/response/smoothing-kind';
import type { Target } from '../../../dsp/response/target';
import type { ResponseWindow } from '../../../src/inspect/inspection';
import type { ChannelLabel } from '../../../src/system/channel';
import { createMemory } from '../memory';

export type InspectView = 'response' | 'distortion' | 'phase' | 'time' | 'decay' | 'bass';

/** What the tuner looks at on the Inspect sheet; kept until the page is closed. */
export interface InspectWishes {
  readonly view: InspectView;
  /** Null follows the speaker picked on the plan, else the first. */
  readonly channels: readonly ChannelLabel[] | null;
  readonly smoothing: SmoothingKind;
  readonly window: ResponseWindow;
  /** Each curve for itself, their average, or each less the first. */
  readonly combine: 'each' | 'average' | 'difference';
  /** Every curve at 0 dB in its own middle band. */
  readonly levelled: boolean;
  /** Seats beside the current one, by id. */
  readonly seats: readonly string[];
  /** What curves are held against; null: nothing. */
  readonly target: Target | null;
  /** Whether curves are drawn as what they have over the target. */
  readonly overTarget: boolean;
}

const first: InspectWishes = {
  view: 'response',
  channels: null,
  smoothing: '1/12',
  window: { kind: 'whole' },
  combine: 'each',
  levelled: false,
  seats: [],
  target: null,
  overTarget: false,
};

export const inspectWishes = createMemory<InspectWishes>(() => first);
