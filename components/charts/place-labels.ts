/** A text to be set near something, with the places it would like, best first. */
export interface LabelRequest {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** Left edge and vertical middle of the text. */
  readonly candidates: readonly { readonly x: number; readonly y: number }[];
}

export interface PlacedLabel {
  readonly id: string;
  readonly x: number;
  readonly y: number;
  /** False when no free place was left; the caller leaves such a label out. */
  readonly free: boolean;
}

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const gap = 2;
const crossingCost = 1;
const orderCost = 0.35;

function boxOf(request: LabelRequest, x: number, y: number): Box {
  return {
    left: x - gap,
    right: x + request.width + gap,
    top: y - request.height / 2 - gap / 2,
    bottom: y + request.height / 2 + gap / 2,
  };
}

function overlaps(a: Box, b: Box): boolean {
  return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

function pointsInside(box: Box, points: readonly (readonly [number, number])[]): number {
  let count = 0;
  for (const [x, y] of points) {
    if (x > box.left && x < box.right && y > box.top && y < box.bottom) count++;
  }
  return count;
}

function clamp(value: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, value));
}

/**
 * Sets labels one after another, each at the wished place that crosses fewest obstacle points and
 * no label set before it; when all wished places are taken, the free row nearest the first wish.
 * Two labels never overlap: one that finds no room at all comes back with `free: false`.
 */
export function placeLabels(
  requests: readonly LabelRequest[],
  bounds: Box,
  obstacles: readonly (readonly [number, number])[] = [],
  taken: readonly Box[] = [],
): PlacedLabel[] {
  const boxes: Box[] = [...taken];
  return requests.map((request) => {
    const wishes = request.candidates.map(({ x, y }) => ({
      x: clamp(x, bounds.left, Math.max(bounds.left, bounds.right - request.width)),
      y: clamp(y, bounds.top + request.height / 2, bounds.bottom - request.height / 2),
    }));
    const place =
      cheapest(request, wishes, boxes, obstacles) ?? nextRow(request, wishes, bounds, boxes);
    if (!place) return { id: request.id, x: bounds.left, y: bounds.top, free: false };
    boxes.push(boxOf(request, place.x, place.y));
    return { id: request.id, ...place, free: true };
  });
}

function cheapest(
  request: LabelRequest,
  wishes: readonly { x: number; y: number }[],
  boxes: readonly Box[],
  obstacles: readonly (readonly [number, number])[],
): { x: number; y: number } | null {
  let best: { x: number; y: number } | null = null;
  let bestCost = Infinity;
  wishes.forEach((wish, order) => {
    const box = boxOf(request, wish.x, wish.y);
    if (boxes.some((other) => overlaps(box, other))) return;
    const cost = pointsInside(box, obstacles) * crossingCost + order * orderCost;
    if (cost < bestCost) {
      best = wish;
      bestCost = cost;
    }
  });
  return best;
}

function nextRow(
  request: LabelRequest,
  wishes: readonly { x: number; y: number }[],
  bounds: Box,
  boxes: readonly Box[],
): { x: number; y: number } | null {
  const half = request.height / 2;
  const span = bounds.bottom - bounds.top;
  for (let distance = 0; distance <= span; distance += 2) {
    for (const wish of wishes) {
      for (const y of [wish.y - distance, wish.y + distance]) {
        if (y - half < bounds.top || y + half > bounds.bottom) continue;
        const box = boxOf(request, wish.x, y);
        if (!boxes.some((other) => overlaps(box, other))) return { x: wish.x, y };
      }
    }
  }
  return null;
}
