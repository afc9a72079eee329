import type { ChannelLabel } from '../../src/system/channel';
import type { DeclaredPlace } from '../../src/system/declared-system';
import { refusePlace } from '../../src/system/refuse-place';
import { standingOffset, standingPlace, type DeclaredPlan } from '../../src/system/standing-place';
import type { Arrangement } from './arrange-plan';
import { snapPlace } from './snap-place';

/** A speaker on its way from one place to another; the document knows nothing of it yet. */
export interface SpeakerDrag {
  readonly label: ChannelLabel;
  /** The drawing as it was: it keeps still while a speaker moves on it. */
  readonly frame: Arrangement;
  readonly from: DeclaredPlace;
  /** Where the pointer took hold of the symbol, pixels from its middle. */
  readonly hold: { readonly x: number; readonly y: number };
  /** The last place at which the speaker can stand. */
  readonly place: DeclaredPlace;
  /** Why it cannot stand where the pointer is now; null when it can. */
  readonly refusal: string | null;
  /** Whether the pointer left the spot where it came down. */
  readonly moved: boolean;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A hand that presses without dragging moves up to so far, pixels. */
const stillPixels = 4;

/** Takes hold of a speaker at a point of the drawing, pixels from the listener. */
export function takeHold(
  plan: DeclaredPlan,
  label: ChannelLabel,
  frame: Arrangement,
  at: Point,
): SpeakerDrag {
  const from = standingPlace(plan, label);
  const { rightMetres, backMetres } = standingOffset(plan, label, from);
  const hold = { x: at.x - rightMetres * frame.perMetre, y: at.y - backMetres * frame.perMetre };
  return { label, frame, from, hold, place: from, refusal: null, moved: false };
}

/** The drag after the pointer moved; never leaves the drawing. */
export function dragTo(drag: SpeakerDrag, plan: DeclaredPlan, at: Point): SpeakerDrag {
  const { frame, hold, from, label } = drag;
  const start = standingOffset(plan, label, from);
  const x = clamp(at.x - hold.x, -frame.reach + 10, frame.reach - 10);
  const y = clamp(at.y - hold.y, frame.top + 10, frame.bottom - 10);
  const away = Math.hypot(
    x - start.rightMetres * frame.perMetre,
    y - start.backMetres * frame.perMetre,
  );
  if (!drag.moved && away < stillPixels) return drag;
  const target = { rightMetres: x / frame.perMetre, backMetres: y / frame.perMetre };
  const place = snapPlace(plan, label, from, target);
  const refusal = refusePlace(plan, label, place);
  return { ...drag, moved: true, refusal, place: refusal === null ? place : drag.place };
}

function clamp(value: number, least: number, most: number): number {
  return Math.max(least, Math.min(most, value));
}
