import { describe, expect, it } from 'vitest';
import { findAgain, plainName } from '../../../../src/rig/live/list-devices';

const chosen = { id: 'old', name: 'Interface' };

describe('findAgain', () => {
  it('finds the device by its id, whatever it is called today', () => {
    const devices = [
      { id: 'other', name: 'Interface' },
      { id: 'old', name: 'Renamed' },
    ];
    expect(findAgain(chosen, devices)).toBe(devices[1]);
  });

  it('finds the only one of its name when ids have rotated', () => {
    const devices = [
      { id: 'a', name: 'Speakers' },
      { id: 'b', name: 'Interface' },
    ];
    expect(findAgain(chosen, devices)).toBe(devices[1]);
  });

  it('does not guess between two of one name, nor among nameless ones', () => {
    const twins = ['a', 'b'].map((id) => ({ id, name: 'Interface' }));
    expect(findAgain(chosen, twins)).toBeNull();
    expect(findAgain({ id: 'old', name: '' }, [{ id: 'a', name: '' }])).toBeNull();
    expect(findAgain(chosen, [])).toBeNull();
  });
});

describe('plainName', () => {
  it.each([
    ['Interface', 'Interface'],
    ['  two\nlines\tand\u0000a null ', 'two lines and a null'],
    ['turned \u202Eround', 'turned round'],
    ['<img src=x onerror=alert(1)> & “co”', '<img src=x onerror=alert(1)> & “co”'],
    ['Lautsprecher für 響き 🔊', 'Lautsprecher für 響き 🔊'],
    ['\u0007', ''],
  ])('shows %j on one plain line', (label, name) => {
    expect(plainName(label)).toBe(name);
  });

  it('cuts what is too long between letters, never inside one', () => {
    expect(plainName('🔊'.repeat(500))).toBe(`${'🔊'.repeat(59)}…`);
    expect(plainName('x'.repeat(60))).toBe('x'.repeat(60));
  });
});
