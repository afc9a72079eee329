import { describe, expect, it } from 'vitest';
import { bandPath, curveAt, curvePath } from '../../../components/charts/curve-path';
import { envelopePath } from '../../../components/charts/envelope-path';

const scales = { x: (hz: number) => hz, y: (db: number) => -db };

describe('curves as paths', () => {
  it('draws a line through its points', () => {
    expect(curvePath([10, 20, 40], [-3, -2, -1.25], scales)).toBe('M10,3L20,2L40,1.3');
  });

  it('breaks where a number is missing', () => {
    expect(curvePath([10, 20, 30, 40, 50], [-1, -2, null, NaN, -5], scales)).toBe(
      'M10,1L20,2M50,5Z',
    );
    expect(curvePath([10, 0, -5, 40], [1, 1, 1, 1], scales)).not.toMatch(/NaN/);
  });

  it('closes the band between two curves', () => {
    expect(bandPath([10, 20], [-4, -3], [-2, -1], scales)).toBe('M10,2L20,1L20,3L10,4Z');
  });

  it('is empty for no points', () => {
    expect(curvePath([], [], scales)).toBe('');
    expect(curvePath([10, 20], [null, null], scales)).toBe('');
  });
});

describe('reading a curve', () => {
  it('is straight in log frequency between its points', () => {
    expect(curveAt([10, 1000], [0, -20], 100)).toBeCloseTo(-10, 9);
    expect(curveAt([10, 1000], [0, -20], 10)).toBe(0);
    expect(curveAt([10, 1000], [0, -20], 1000)).toBe(-20);
  });

  it('gives nothing outside its points or in a gap', () => {
    expect(curveAt([10, 1000], [0, -20], 9)).toBeNull();
    expect(curveAt([10, 20, 30], [0, null, 0], 15)).toBeNull();
    expect(curveAt([], [], 15)).toBeNull();
  });
});

describe('an envelope as a path', () => {
  const scale = { invert: (pixel: number) => pixel / 1000, range: () => [0, 8] };

  it('stands on its base and keeps the largest value of each column', () => {
    const level = [0, 0, 0, 1, 0, 0, 0, 0, 0];
    const path = envelopePath({ startSeconds: 0, stepSeconds: 0.001, level }, 0, scale, 50, 20);
    expect(path).toBe('M0.0 50.0L0.0 50.0L2.0 30.0L4.0 50.0L6.0 50.0L8.0 50.0L8.0 50.0Z');
  });

  it('is empty without values, and flat where they are missing', () => {
    const envelope = { startSeconds: 0, stepSeconds: 0.001, level: [] };
    expect(envelopePath(envelope, 0, scale, 50, 20)).toBe('');
    const gaps = { ...envelope, level: [NaN, NaN, NaN, NaN] };
    expect(envelopePath(gaps, 0, scale, 50, 20)).toBe('M0.0 50.0L0.0 50.0L2.0 50.0L2.0 50.0Z');
  });
});
