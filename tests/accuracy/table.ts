/** One figure of an accuracy table, beside the prototype's and its limit. */
export interface Row {
  readonly what: string;
  readonly ours: string;
  /** The prototype's figure; '' where it gave none. */
  readonly prototype: string;
  /** Cramér-Rao: what no unbiased reading can better, as a standard deviation; '' where not known. */
  readonly bound?: string;
  /** What is still let pass; '' for a figure that is only shown. */
  readonly limit: string;
  readonly within: boolean;
}

export interface Table {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** A row that must not exceed its limit; NaN, from no cases at all, is beyond every limit. */
export function atMost(
  what: string,
  value: number,
  limit: number,
  prototype: string,
  show: (value: number) => string = String,
): Row {
  const within = Math.abs(value) <= limit;
  return { what, ours: show(value), prototype, limit: `≤ ${show(limit)}`, within };
}

/** A row that must reach its limit. */
export function atLeast(
  what: string,
  value: number,
  limit: number,
  prototype: string,
  show: (value: number) => string = String,
): Row {
  return { what, ours: show(value), prototype, limit: `≥ ${show(limit)}`, within: value >= limit };
}

/** A row without a limit. */
export function shown(what: string, ours: string, prototype = ''): Row {
  return { what, ours, prototype, limit: '', within: true };
}

/** A row with its Cramér-Rao bound beside it. */
export function bounded(row: Row, bound: string): Row {
  return { ...row, bound };
}

/** Value below which a share of the values lies, linear in between; NaN for none. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const place = share * (sorted.length - 1);
  const below = sorted[Math.floor(place)] ?? Number.NaN;
  const above = sorted[Math.ceil(place)] ?? Number.NaN;
  return below + (above - below) * (place - Math.floor(place));
}

/** The table as lines of text; a figure beyond its limit is marked. */
export function printTable({ title, rows }: Table): string {
  const head: Row = {
    what: title,
    ours: 'here',
    prototype: 'prototype',
    bound: 'bound',
    limit: 'limit',
    within: true,
  };
  const all: Row[] = [head, ...rows];
  const width = (key: 'what' | 'ours' | 'prototype' | 'bound' | 'limit'): number =>
    Math.max(...all.map((row) => (row[key] ?? '').length));
  const lines = all.map((row) =>
    [
      row.what.padEnd(width('what')),
      row.ours.padStart(width('ours')),
      row.prototype.padStart(width('prototype')),
      (row.bound ?? '').padStart(width('bound')),
      row.limit.padStart(width('limit')),
      row.within ? '' : 'BEYOND',
    ]
      .join('  ')
      .trimEnd(),
  );
  const [first = '', ...rest] = lines;
  return [first, '-'.repeat(first.length), ...rest, ''].join('\n');
}
