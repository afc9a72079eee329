import { overlapArea, type Box } from './place-labels';

export interface RingLabel extends Box {
  readonly text: string;
}

/**
 * Puts each ring's label on its ring where nothing else stands; a ring with no free place goes
 * without. Tries straight ahead first, then turns to both sides.
 */
export function placeRingLabels(
  rings: readonly { readonly text: string; readonly radius: number }[],
  reach: number,
  taken: readonly Box[],
): RingLabel[] {
  const placed: RingLabel[] = [];
  for (const { text, radius } of rings) {
    for (let turn = 0; turn <= 24; turn++) {
      const angle = ((turn % 2 === 0 ? turn : -turn - 1) / 24) * Math.PI;
      const box = {
        x: Math.sin(angle) * radius,
        y: -Math.cos(angle) * radius,
        halfWidth: text.length * 3.2 + 2,
        halfHeight: 6,
      };
      const inside =
        Math.abs(box.x) + box.halfWidth <= reach && Math.abs(box.y) + box.halfHeight <= reach;
      if (!inside || [...taken, ...placed].some((other) => overlapArea(box, other) > 0)) continue;
      placed.push({ ...box, text });
      break;
    }
  }
  return placed;
}
