import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/late/late-failure';
import { trouble } from '../../../src/trouble';
import { find, findAll, mount, textOf } from '../mount';
import { expectQuiet } from '../quiet';

expectQuiet();

const lost = trouble('failed', 'It did not load.');

describe('what stands in the place of a part that did not load', () => {
  it('says what is missing and why, and asks to try again', async () => {
    const element = await mount('ll-late-failure', { name: 'Probe', trouble: lost });
    let asked = 0;
    element.addEventListener('ll-again', () => (asked += 1));
    expect(find(element, 'h1').textContent).toBe('Probe could not be loaded');
    expect(find(element, '[role=alert]').textContent).toBe('It did not load.');
    expect(textOf(element)).toContain('Reload the page');
    await userEvent.click(find(element, 'button.go'));
    expect(asked).toBe(1);
  });

  it('leaves the heading to a page that has one', async () => {
    const element = await mount('ll-late-failure', { trouble: lost });
    expect(findAll(element, 'h1')).toEqual([]);
  });
});
