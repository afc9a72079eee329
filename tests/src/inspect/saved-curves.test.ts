import { describe, expect, it } from 'vitest';
import { curvesToCsv } from '../../../src/inspect/curves-to-csv';
import { savedImpulse, savedLevel } from '../../../src/inspect/saved-curves';
import { readStrictCsv } from './strict-csv';

const facts = { layout: '5.1', speaker: 'FL', position: 'Seat 1', takenAt: '2026-03-01T09:05:00Z' };

describe('curves to be saved', () => {
  it('are levels over frequency with what their 0 dB is', () => {
    const curve = { hz: [20, 25.198421], db: [null, -3.14159] };
    const saved = [
      savedLevel('FL response', curve, '500–2000 Hz'),
      savedLevel('FL − FR', curve, null),
    ];
    expect(readStrictCsv(curvesToCsv(saved, facts, 'x')[0]?.text ?? '')).toEqual([
      ['frequency (Hz)', 'FL response (dB re 500–2000 Hz)', 'FL − FR (dB)'],
      ['20', '', ''],
      ['25.1984', '-3.14', '-3.14'],
    ]);
  });

  it('are impulse responses over seconds after zero delay', () => {
    const ir = { samples: Float64Array.of(0, 1, -0.25), sampleRate: 48_000, zeroIndex: 1 };
    const [file] = curvesToCsv([savedImpulse('FL', ir)], facts, 'impulse response');
    expect(readStrictCsv(file?.text ?? '')).toEqual([
      ['time (s)', 'FL (re full scale)'],
      ['-0.0000208333', '0'],
      ['0', '1'],
      ['0.0000208333', '-0.25'],
    ]);
  });
});
