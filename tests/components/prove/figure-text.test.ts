import { describe, expect, it } from 'vitest';
import { figureText } from '../../../components/prove/figure-text';
import { plain } from '../mount';

const figure = { value: 0.4, interval: [0.1, 0.7], allowed: [-0.5, 0.5], unit: 'dB' } as const;

describe('the number beside a line of the proof', () => {
  it('is what was read and what is allowed where the line fails', () => {
    const said = figureText({ claim: 'level', verdict: 'fail', figure }) ?? '';
    expect(plain(said)).toBe('+0.4 dB (0.1–0.7); allowed −0.5 to 0.5 dB.');
  });

  it('repeats no interval that the sentence of an untold line has said', () => {
    const said = figureText({ claim: 'level', verdict: 'cannot tell', figure }) ?? '';
    expect(plain(said)).toBe('Allowed −0.5 to 0.5 dB.');
    const shape = figureText({ claim: 'response', verdict: 'cannot tell', figure }) ?? '';
    expect(plain(shape)).toContain('(0.1–0.7)');
  });

  it('is left out where the line holds', () => {
    expect(figureText({ claim: 'level', verdict: 'pass', figure })).toBeNull();
  });
});
