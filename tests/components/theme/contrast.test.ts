import { afterEach, describe, expect, it } from 'vitest';
import '../../../components/theme/base.css';

afterEach(() => delete document.documentElement.dataset['theme']);

type Rgb = readonly [number, number, number];

/** The colour a token gives in a theme, 0 to 1. */
function colourOf(token: string, theme: string): Rgb {
  document.documentElement.dataset['theme'] = theme;
  const probe = document.createElement('span');
  probe.style.color = `var(${token})`;
  document.body.append(probe);
  const [red, green, blue] = (getComputedStyle(probe).color.match(/\d+(\.\d+)?/g) ?? []).map(
    Number,
  );
  probe.remove();
  if (red === undefined || green === undefined || blue === undefined) {
    throw new RangeError(`${token} is no colour`);
  }
  return [red / 255, green / 255, blue / 255];
}

/** WCAG 2.2, relative luminance. */
function luminance(colour: Rgb): number {
  const [red, green, blue] = linear(colour);
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function linear([red, green, blue]: Rgb): Rgb {
  const one = (value: number): number =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  return [one(red), one(green), one(blue)];
}

/** WCAG 2.2, contrast ratio. */
function contrast(one: Rgb, other: Rgb): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

const hues = ['--front', '--centre', '--surround', '--rear', '--height', '--sub'];
const texts = ['--ink', '--soft', '--signal', '--ok', ...hues];
const grounds = ['--paper', '--sheet', '--wash'];

for (const theme of ['light', 'dark']) {
  describe(`the ${theme} theme`, () => {
    for (const text of texts) {
      it(`writes ${text} at 4.5 : 1 or better on every ground (WCAG 2.2, 1.4.3)`, () => {
        for (const ground of grounds) {
          const ratio = contrast(colourOf(text, theme), colourOf(ground, theme));
          expect(ratio, ground).toBeGreaterThanOrEqual(4.5);
        }
      });
    }

    it('writes on filled buttons at 4.5 : 1 or better', () => {
      const pairs = [
        ['--on-signal', '--signal'],
        ['--on-ink', '--ink'],
      ] as const;
      for (const [text, ground] of pairs) {
        expect(contrast(colourOf(text, theme), colourOf(ground, theme))).toBeGreaterThanOrEqual(
          4.5,
        );
      }
    });

    it('outlines fields and controls at 3 : 1 or better (WCAG 2.2, 1.4.11)', () => {
      for (const ground of ['--paper', '--sheet']) {
        const ratio = contrast(colourOf('--edge', theme), colourOf(ground, theme));
        expect(ratio, ground).toBeGreaterThanOrEqual(3);
      }
    });

    it('keeps the six hues of the groups apart for every kind of colour vision', () => {
      for (const [kind, matrix] of Object.entries(visions)) {
        for (const [index, hue] of hues.entries()) {
          for (const other of hues.slice(index + 1)) {
            const apart = distance(
              labOf(seen(colourOf(hue, theme), matrix)),
              labOf(seen(colourOf(other, theme), matrix)),
            );
            expect(apart, `${hue} and ${other}, ${kind}`).toBeGreaterThan(15);
          }
        }
      }
    });
  });
}

/**
 * Full dichromacy on linear RGB: Machado, Oliveira, Fernandes, IEEE TVCG 15(6), 2009, table for
 * severity 1.0 (from memory). Rows give red, green, blue as seen.
 */
const visions: Readonly<Record<string, readonly number[]>> = {
  'ordinary vision': [1, 0, 0, 0, 1, 0, 0, 0, 1],
  protanopia: [
    0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998,
  ],
  deuteranopia: [
    0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.01182, 0.04294, 0.968881,
  ],
  tritanopia: [
    1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.3039,
  ],
};

function seen(colour: Rgb, matrix: readonly number[]): Rgb {
  const from = linear(colour);
  const row = (at: number): number =>
    Math.min(
      1,
      Math.max(
        0,
        from.reduce((sum, value, i) => sum + value * (matrix[at + i] ?? 0), 0),
      ),
    );
  return [row(0), row(3), row(6)];
}

/** CIE L*a*b* of linear sRGB, white point D65 (CIE 15). */
function labOf([red, green, blue]: Rgb): Rgb {
  const x = (0.4124564 * red + 0.3575761 * green + 0.1804375 * blue) / 0.95047;
  const y = 0.2126729 * red + 0.7151522 * green + 0.072175 * blue;
  const z = (0.0193339 * red + 0.119192 * green + 0.9503041 * blue) / 1.08883;
  const f = (t: number): number =>
    t > 216 / 24389 ? Math.cbrt(t) : (24389 / 27 / 116) * t + 4 / 29;
  return [116 * f(y) - 16, 500 * (f(x) - f(y)), 200 * (f(y) - f(z))];
}

/** CIE 1976 colour difference. */
function distance(one: Rgb, other: Rgb): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1], one[2] - other[2]);
}
