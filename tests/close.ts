import { expect } from 'vitest';

/**
 * Asserts that every number differs by at most `tolerance`, all the way down; everything that is
 * not a number must be equal. NaN is close to nothing. Say a reason where the tolerance is loose.
 */
export function expectClose(
  actual: unknown,
  expected: unknown,
  tolerance: number,
  reason?: string,
): void {
  const differences: string[] = [];
  compare(actual, expected, tolerance, '', differences);
  const head = differences.slice(0, 5).join('\n');
  const rest = differences.length > 5 ? `\nand ${differences.length - 5} more` : '';
  const why = reason === undefined ? '' : `\n(${reason})`;
  if (differences.length > 0) expect.fail(`${head}${rest}${why}`);
  // Counts as an assertion, so that a test that requires one knows it ran.
  expect(differences).toHaveLength(0);
}

function compare(
  actual: unknown,
  expected: unknown,
  tolerance: number,
  path: string,
  out: string[],
): void {
  const where = path === '' ? 'value' : path;
  if (typeof expected === 'number' && typeof actual === 'number') {
    const same = Object.is(actual, expected) || Math.abs(actual - expected) <= tolerance;
    if (!same) {
      out.push(`${where}: ${actual}, expected ${expected} ± ${tolerance}`);
    }
    if (Number.isNaN(actual) || Number.isNaN(expected))
      out.push(`${where}: NaN is close to nothing`);
    return;
  }
  if (isList(expected) && isList(actual)) {
    if (actual.length !== expected.length) {
      out.push(`${where}: ${actual.length} entries, expected ${expected.length}`);
      return;
    }
    for (let i = 0; i < expected.length; i++) {
      compare(actual[i], expected[i], tolerance, `${path}[${i}]`, out);
    }
    return;
  }
  if (isRecord(expected) && isRecord(actual)) {
    for (const key of new Set([...Object.keys(expected), ...Object.keys(actual)])) {
      compare(actual[key], expected[key], tolerance, `${path}.${key}`, out);
    }
    return;
  }
  if (!Object.is(actual, expected)) {
    out.push(`${where}: ${String(actual)}, expected ${String(expected)}`);
  }
}

function isList(value: unknown): value is ArrayLike<unknown> {
  return Array.isArray(value) || (ArrayBuffer.isView(value) && 'length' in value);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !isList(value);
}
