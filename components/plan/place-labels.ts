/** A rectangle by its middle and its half sides. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

export interface LabelRequest {
  /** The middle of what is labelled. */
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

export interface LabelSpace {
  /** Half the width of the drawing, whose middle is 0, 0; it grows as high as it must. */
  readonly reach: number;
  /** Half the side of a symbol. */
  readonly symbol: number;
  /** What labels must also keep clear of. */
  readonly obstacles: readonly Box[];
}

const directions = 16;
const gaps = [5, 8, 12, 18, 26, 36, 48];

/**
 * Finds a place for each label beside its symbol such that no two overlap, none covers a symbol
 * and none leaves the drawing at its sides: coordinate descent over candidate places, nearest and most outward
 * first. Same input, same answer.
 */
export function placeLabels(requests: readonly LabelRequest[], space: LabelSpace): Box[] {
  const symbols = requests.map((one) => square(one.x, one.y, space.symbol));
  const fixed = [...symbols, ...space.obstacles];
  const candidates = requests.map((request) => candidatesOf(request, space, fixed));
  let best = candidates.map((options) => cheapest(options, []));
  let bestCost = totalOverlap(best);
  for (let start = 0; start < requests.length && bestCost > 0; start++) {
    const trial = descend(best, candidates, start);
    const cost = totalOverlap(trial);
    if (cost >= bestCost && start > 0) continue;
    best = trial;
    bestCost = cost;
  }
  return best;
}

interface Candidate {
  readonly box: Box;
  readonly cost: number;
}

function descend(
  from: readonly Box[],
  candidates: readonly (readonly Candidate[])[],
  start: number,
): Box[] {
  const boxes = [...from];
  for (let pass = 0; pass < 30; pass++) {
    let moved = false;
    for (let step = 0; step < boxes.length; step++) {
      const index = (start + step) % boxes.length;
      const others = boxes.filter((_, other) => other !== index);
      const choice = cheapest(candidates[index] ?? [], others);
      if (choice === boxes[index]) continue;
      boxes[index] = choice;
      moved = true;
    }
    if (!moved) break;
  }
  return boxes;
}

function candidatesOf(
  request: LabelRequest,
  space: LabelSpace,
  fixed: readonly Box[],
): Candidate[] {
  const { halfWidth, halfHeight } = request;
  const outward = Math.atan2(request.y, request.x);
  const found: Candidate[] = [];
  for (const gap of gaps) {
    for (let step = 0; step < directions; step++) {
      const angle = (step / directions) * 2 * Math.PI;
      const x = request.x + Math.cos(angle) * (space.symbol + gap + halfWidth);
      const y = request.y + Math.sin(angle) * (space.symbol + gap + halfHeight);
      const box = { x, y, halfWidth, halfHeight };
      const turn = Math.abs(Math.atan2(Math.sin(angle - outward), Math.cos(angle - outward)));
      const beyond = Math.max(0, Math.abs(x) + halfWidth - space.reach);
      const cost = gap * 2 + turn * 4 + beyond * 1000 + coverCost(box, fixed);
      found.push({ box, cost });
    }
  }
  return found;
}

function cheapest(options: readonly Candidate[], others: readonly Box[]): Box {
  let best: Box | null = null;
  let bestCost = Infinity;
  for (const option of options) {
    if (option.cost >= bestCost) continue;
    const cost = option.cost + others.reduce((sum, box) => sum + clash(option.box, box, 60), 0);
    if (cost >= bestCost) continue;
    best = option.box;
    bestCost = cost;
  }
  if (!best) throw new RangeError('a label needs at least one candidate place');
  return best;
}

function coverCost(box: Box, fixed: readonly Box[]): number {
  return fixed.reduce((sum, obstacle) => sum + clash(box, obstacle, 20), 0);
}

function totalOverlap(boxes: readonly Box[]): number {
  let sum = 0;
  boxes.forEach((box, index) => {
    for (const other of boxes.slice(index + 1)) sum += overlapArea(box, other);
  });
  return sum;
}

function clash(a: Box, b: Box, weight: number): number {
  const area = overlapArea(a, b);
  return area > 0 ? weight * (10 + area) : 0;
}

/** Area two boxes share; 0 when they only touch. */
export function overlapArea(a: Box, b: Box): number {
  const wide = a.halfWidth + b.halfWidth - Math.abs(a.x - b.x);
  const high = a.halfHeight + b.halfHeight - Math.abs(a.y - b.y);
  return wide > 1e-9 && high > 1e-9 ? wide * high : 0;
}

function square(x: number, y: number, half: number): Box {
  return { x, y, halfWidth: half, halfHeight: half };
}
