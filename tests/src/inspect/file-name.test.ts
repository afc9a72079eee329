import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileName } from '../../../src/inspect/file-name';

const facts = {
  layout: '5.2.4',
  speaker: 'FL',
  position: 'Seat 1',
  takenAt: '2026-03-01T09:05:59.123Z',
};

describe('fileName', () => {
  it('names layout, speaker, position, minute and content', () => {
    expect(fileName(facts, 'response', 'csv')).toBe(
      '5.2.4 FL Seat 1 2026-03-01 09-05 response.csv',
    );
    expect(fileName({ ...facts, speaker: null }, 'response', 'csv')).toBe(
      '5.2.4 Seat 1 2026-03-01 09-05 response.csv',
    );
  });

  it.each([
    ['../../etc/passwd', 'etc passwd'],
    ['C:\\temp\\"x"|?*<>', 'C temp x'],
    ['<script>alert(1)</script>', 'script alert(1) script'],
    ['=1+1', '1 1'],
    ['-rf', 'rf'],
    ['a\u0000b\u202Egpj\r\n', 'a b gpj'],
    ['Sofa (links)', 'Sofa (links)'],
    ['Küche 北', 'Küche 北'],
    ['end. . ', 'end'],
    ["$(reboot) `x` %PATH% 'q'", '(reboot) x PATH q'],
  ])('makes %s harmless', (position, plain) => {
    const name = fileName({ ...facts, position }, 'response', 'csv');
    expect(name).toBe(`5.2.4 FL ${plain} 2026-03-01 09-05 response.csv`);
  });

  it('avoids names of devices and names that are empty', () => {
    const nothing = { layout: '', speaker: null, position: '', takenAt: '' };
    expect(fileName(nothing, 'aux', 'wav')).toBe('aux_.wav');
    expect(fileName({ ...nothing, layout: 'com1' }, 'x', 'wav')).toBe('com1_ x.wav');
    expect(fileName(nothing, '///', 'wav')).toBe('curve.wav');
  });

  it('holds on every system, whatever was typed', () => {
    const property = fc.property(
      fc.string({ unit: 'binary', maxLength: 300 }),
      fc.string({ unit: 'binary', maxLength: 300 }),
      (position, layout) => {
        const name = fileName({ ...facts, position, layout }, 'response', 'csv');
        expect(name).toMatch(/^[\p{L}\p{M}\p{N} ._()-]+ response\.csv$/u);
        expect(name).toMatch(/^[\p{L}\p{N}(]/u);
        expect(new TextEncoder().encode(name).length).toBeLessThanOrEqual(240);
      },
    );
    fc.assert(property, { numRuns: 500, seed: 71 });
  });
});
