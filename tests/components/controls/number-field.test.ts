import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/controls/number-field';
import { readEntry } from '../../../src/locale/read-entry';
import { inLocale } from '../../src/locale/set-locale';
import { deepText, findDeep } from '../deep';
import { expectQuiet } from '../quiet';

expectQuiet();
afterEach(() => {
  document.body.replaceChildren();
  inLocale('en-GB');
});

const range = { label: 'Temperature', unit: '°C', min: -10, max: 50 };

describe('a typed number', () => {
  it('may have a point, a comma, a sign or spaces around it', () => {
    expect(readEntry(' 21.5 ', range)).toBe(21.5);
    expect(readEntry('21,5', range)).toBe(21.5);
    expect(readEntry('−4', range)).toBe(-4);
  });

  for (const text of ['warm', '1e3', '12 °C', '1.2.3', 'NaN', 'Infinity']) {
    it(`is not “${text}”`, () => expect(readEntry(text, range)).toContain('is not a number'));
  }

  it('outside its range is refused with the range', () => {
    expect(readEntry('51', range)).toContain('between −10 and 50\u202f°C');
  });
});

describe('the number field', () => {
  it('writes a number its own way, also one that is as it was', async () => {
    const field = document.createElement('ll-number');
    Object.assign(field, range, { value: 20.5 });
    document.body.append(field);
    await field.updateComplete;
    const input = findDeep(field, 'input');
    if (!(input instanceof HTMLInputElement)) throw new RangeError('no field');
    for (const text of ['20,50', '20.5', '-0', '-4']) {
      await userEvent.fill(input, text);
      await userEvent.keyboard('{Enter}');
      await field.updateComplete;
      await expect
        .poll(() => input.value)
        .toBe(text === '-4' ? '−4' : text === '-0' ? '0' : '20.5');
    }
  });

  it('hands on a good number and says a bad one, keeping the last good', async () => {
    const field = document.createElement('ll-number');
    Object.assign(field, range, { value: 20 });
    const heard: number[] = [];
    field.addEventListener('ll-number', (event) => heard.push(event.detail));
    document.body.append(field);
    await field.updateComplete;
    await userEvent.fill(findDeep(field, 'input'), '23');
    await userEvent.keyboard('{Enter}');
    await userEvent.fill(findDeep(field, 'input'), 'warm');
    await userEvent.keyboard('{Enter}');
    await field.updateComplete;
    expect(heard).toEqual([23]);
    expect(field.value).toBe(23);
    expect(deepText(field)).toContain('“warm” is not a number');
    expect(findDeep(field, 'input').getAttribute('aria-invalid')).toBe('true');
  });

  it('shows a fraction it was given, and clears what was typed wrong once it changes', async () => {
    const field = document.createElement('ll-number');
    Object.assign(field, range, { value: 21.5 });
    document.body.append(field);
    await field.updateComplete;
    const input = findDeep(field, 'input') as HTMLInputElement;
    expect(input.value).toBe('21.5');
    await userEvent.fill(input, 'warm');
    await userEvent.keyboard('{Enter}');
    field.value = -4;
    await field.updateComplete;
    expect(input.value).toBe('−4');
    expect(deepText(field)).not.toContain('not a number');
  });

  it('shows a length in feet and inches, takes any unit, and moves nothing unedited', async () => {
    inLocale('en-US');
    const field = document.createElement('ll-number');
    // 2.41 m are 94.8819 in: 7 ft 10.8819 in.
    Object.assign(field, { label: 'Distance', measure: 'length', decimals: 2, value: 2.41 });
    const heard: number[] = [];
    field.addEventListener('ll-number', (event) => heard.push(event.detail));
    document.body.append(field);
    await field.updateComplete;
    const input = findDeep(field, 'input') as HTMLInputElement;
    expect(input.value).toBe(`7' 10.9"`);
    await userEvent.fill(input, '8');
    await userEvent.fill(input, `7' 10.9"`);
    await userEvent.keyboard('{Enter}');
    expect(heard).toEqual([]);
    await userEvent.fill(input, '240 cm');
    await userEvent.keyboard('{Enter}');
    expect(heard).toEqual([2.4]);
    expect(field.value).toBe(2.4);
  });
});
