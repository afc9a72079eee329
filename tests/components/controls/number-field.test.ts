import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/controls/number-field';
import { readEntry } from '../../../src/locale/read-entry';
import { deepText, findDeep } from '../deep';
import { expectQuiet } from '../quiet';

expectQuiet();
afterEach(() => document.body.replaceChildren());

const range = { label: 'Temperature', unit: '°C', min: -10, max: 50 };

describe('a typed number', () => {
  it('may have a point, a comma, a sign or spaces around it', () => {
    expect(readEntry(' 21.5 ', range)).toBe(21.5);
    expect(readEntry('21,5', range)).toBe(21.5);
    expect(readEntry('−4', range)).toBe(-4);
  });

  for (const text of ['', 'warm', '1e3', '12 °C', '1.2.3', 'NaN', 'Infinity']) {
    it(`is not “${text}”`, () => expect(readEntry(text, range)).toContain('is not a number'));
  }

  it('outside its range is refused with the range', () => {
    expect(readEntry('51', range)).toContain('between −10 and 50\u202f°C');
  });
});

describe('the number field', () => {
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
});
