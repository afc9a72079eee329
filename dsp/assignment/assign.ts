/**
 * Pairs every row with a column of its own so that the sum of the pairs' costs is least; gives the
 * column of each row. `costs[row][column]`; at least as many columns as rows; Infinity forbids a
 * pair. Null when no pairing avoids the forbidden pairs. Throws RangeError for ragged or too narrow
 * costs or NaN. Method: shortest augmenting paths with potentials (Jonker and Volgenant, Computing
 * 38, 1987, from memory), O(rows²·columns).
 */
export function assign(costs: readonly (readonly number[])[]): number[] | null {
  const columns = costs[0]?.length ?? 0;
  if (costs.some((row) => row.length !== columns || row.some(Number.isNaN))) {
    throw new RangeError('costs must be numbers in rows of one length');
  }
  if (columns < costs.length) {
    throw new RangeError(`${costs.length} rows need as many columns, got ${columns}`);
  }
  const rowPrice = new Float64Array(costs.length);
  const columnPrice = new Float64Array(columns);
  const rowOf = new Int32Array(columns).fill(-1);
  for (let row = 0; row < costs.length; row++) {
    if (!augment(row, { costs, rowPrice, columnPrice, rowOf })) return null;
  }
  const columnOf = new Array<number>(costs.length).fill(-1);
  for (const [column, row] of rowOf.entries()) if (row >= 0) columnOf[row] = column;
  return columnOf;
}

interface Tableau {
  readonly costs: readonly (readonly number[])[];
  readonly rowPrice: Float64Array;
  readonly columnPrice: Float64Array;
  /** Row that holds each column, −1 when it is free. */
  readonly rowOf: Int32Array;
}

/** Finds the cheapest chain of exchanges that gives `start` a column, and carries it out. */
function augment(start: number, { costs, rowPrice, columnPrice, rowOf }: Tableau): boolean {
  const columns = columnPrice.length;
  const least = new Float64Array(columns).fill(Infinity);
  const cameFrom = new Int32Array(columns).fill(-1);
  const done = new Uint8Array(columns);
  let row = start;
  let last = -1;
  let reached = 0;
  for (;;) {
    let next = -1;
    for (let column = 0; column < columns; column++) {
      if (done[column] === 1) continue;
      const cost = costs[row]?.[column] ?? Infinity;
      const reduced = reached + cost - (rowPrice[row] ?? 0) - (columnPrice[column] ?? 0);
      if (reduced < (least[column] ?? Infinity)) {
        least[column] = reduced;
        cameFrom[column] = last;
      }
      if (next < 0 || (least[column] ?? Infinity) < (least[next] ?? Infinity)) next = column;
    }
    if (next < 0 || least[next] === Infinity) return false;
    reached = least[next] ?? 0;
    done[next] = 1;
    last = next;
    row = rowOf[next] ?? -1;
    if (row < 0) break;
  }
  rowPrice[start] = (rowPrice[start] ?? 0) + reached;
  for (let column = 0; column < columns; column++) {
    if (done[column] !== 1 || column === last) continue;
    const gain = reached - (least[column] ?? 0);
    columnPrice[column] = (columnPrice[column] ?? 0) - gain;
    const holder = rowOf[column] ?? -1;
    if (holder >= 0) rowPrice[holder] = (rowPrice[holder] ?? 0) + gain;
  }
  for (let column = last; column >= 0;) {
    const before = cameFrom[column] ?? -1;
    rowOf[column] = before < 0 ? start : (rowOf[before] ?? start);
    column = before;
  }
  return true;
}

/**
 * By how much the pairing that `assign` gave beats all pairings without each of its pairs: the
 * extra cost, row by row, when that pair is forbidden; Infinity when there is no other way.
 */
export function pairMargins(
  costs: readonly (readonly number[])[],
  columnOf: readonly number[],
): number[] {
  const total = (pairing: readonly number[]): number =>
    pairing.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Infinity), 0);
  const best = total(columnOf);
  return columnOf.map((column, row) => {
    const without = costs.map((line, at) =>
      at === row ? line.map((cost, each) => (each === column ? Infinity : cost)) : line,
    );
    const other = assign(without);
    return other ? total(other) - best : Infinity;
  });
}
