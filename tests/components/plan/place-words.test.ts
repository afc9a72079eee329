import { describe, expect, it } from 'vitest';
import { placeInWords } from '../../../components/plan/place-words';
import { plain } from '../mount';

describe('a place in words', () => {
  it.each([
    [0, 0, null, 'ahead, distance not known'],
    [180, 0, 2, 'behind, 2.00 m'],
    [-179.98, 0, 2, 'behind, 2.00 m'],
    [36.8699, 0, 2.5, '36.9° left, 2.50 m'],
    [-110, 12.34, 1.854, '110° right, 12.3° up, 1.85 m'],
    [30, -8, null, '30° left, 8° down, distance not known'],
    [0.01, -0.01, 1, 'ahead, 1.00 m'],
  ])(
    'says %d°, %d° up and %s m as “%s”',
    (azimuthDegrees, elevationDegrees, distanceMetres, words) => {
      expect(plain(placeInWords({ azimuthDegrees, elevationDegrees, distanceMetres }))).toBe(words);
    },
  );
});
