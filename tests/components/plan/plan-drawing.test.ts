import { afterEach, describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../components/theme/base.css';
import '../../../components/plan/plan-drawing';
import type { PlanDrawing } from '../../../components/plan/plan-drawing';
import type { ChannelLabel } from '../../../src/system/channel';
import { layoutOf } from '../fake-bench';
import { expectQuiet } from '../quiet';
import { sampleReadings } from '../sample-readings';

expectQuiet();
afterEach(() => document.body.replaceChildren());

async function drawn(name: string, width: number, measured = false): Promise<PlanDrawing> {
  const box = document.createElement('div');
  box.style.width = `${width}px`;
  const drawing = document.createElement('ll-plan-drawing') as PlanDrawing;
  drawing.layout = layoutOf(name);
  if (measured) drawing.readings = sampleReadings(layoutOf(name));
  drawing.addEventListener('ll-select', (event) => (drawing.selected = event.detail));
  box.append(drawing);
  document.body.append(box);
  await settled(drawing, width);
  await document.fonts.ready;
  await drawing.updateComplete;
  return drawing;
}

async function settled(drawing: PlanDrawing, width: number): Promise<void> {
  await expect
    .poll(() => drawing.renderRoot.querySelector('svg')?.viewBox.baseVal.width)
    .toBe(2 * Math.round(width / 2));
}

function speaker(drawing: PlanDrawing, label: ChannelLabel): SVGElement {
  const found = drawing.renderRoot.querySelector<SVGElement>(`[data-channel="${label}"]`);
  if (!found) throw new RangeError(`no ${label} on the plan`);
  return found;
}

function labelBoxes(drawing: PlanDrawing): { text: string; box: DOMRect }[] {
  return [...drawing.renderRoot.querySelectorAll('text')].map((text) => ({
    text: text.textContent,
    box: text.getBoundingClientRect(),
  }));
}

describe('the plan drawing', () => {
  for (const name of ['2.0', '5.1', '5.2.4', '7.2.4', '9.4.6']) {
    for (const width of [240, 288, 366]) {
      it(`lets no label overlap another in ${name} at ${width} px`, async () => {
        for (const measured of [false, true]) {
          const labels = labelBoxes(await drawn(name, width, measured));
          expect(labels.length).toBeGreaterThan(layoutOf(name).channels.length);
          for (const [index, one] of labels.entries()) {
            for (const other of labels.slice(index + 1)) {
              const wide =
                Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left);
              const high =
                Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top);
              // Boxes are as high as a line; glyphs stay 2 px clear of either edge.
              expect(wide > 0 && high > 4, `${one.text} over ${other.text}`).toBe(false);
            }
          }
          document.body.replaceChildren();
        }
      });
    }
  }

  it('keeps every label inside the drawing', async () => {
    const drawing = await drawn('9.4.6', 272);
    const frame = drawing.getBoundingClientRect();
    for (const { text, box } of labelBoxes(drawing)) {
      expect(box.left, text).toBeGreaterThanOrEqual(frame.left - 1);
      expect(box.right, text).toBeLessThanOrEqual(frame.right + 1);
    }
  });

  it('selects a speaker on a click and lets go of it on the next', async () => {
    const drawing = await drawn('5.2.4', 288);
    await userEvent.click(speaker(drawing, 'SiL'));
    expect(drawing.selected).toBe('SiL');
    await drawing.updateComplete;
    expect(speaker(drawing, 'SiL').getAttribute('aria-selected')).toBe('true');
    await userEvent.click(speaker(drawing, 'SiL'));
    expect(drawing.selected).toBeNull();
  });

  it('is one stop of the Tab key, and arrows walk through the speakers', async () => {
    const drawing = await drawn('5.1', 288);
    await userEvent.tab();
    expect(drawing.shadowRoot?.activeElement).toBe(speaker(drawing, 'FL'));
    await userEvent.keyboard('{ArrowRight}{ArrowRight}');
    await drawing.updateComplete;
    expect(drawing.selected).toBe('FR');
    await userEvent.keyboard('{End}');
    expect(drawing.selected).toBe('SiR');
    await drawing.updateComplete;
    expect(drawing.shadowRoot?.activeElement).toBe(speaker(drawing, 'SiR'));
  });

  it('names each speaker, its partner, its distance and what is wrong for assistive technology', async () => {
    const drawing = await drawn('5.2.4', 288, true);
    expect(speaker(drawing, 'SiR').getAttribute('aria-label')).toMatch(
      /^SiR, side right, with SiL, \d\.\d\d\u202fm away, polarity inverted$/,
    );
    expect(speaker(drawing, 'Sub 1').getAttribute('aria-label')).toContain('not measured yet');
  });

  it('draws beds, heights and subs in different shapes', async () => {
    const drawing = await drawn('5.2.4', 288);
    expect(speaker(drawing, 'TpFL').querySelector('circle.shape')).not.toBeNull();
    const cone = speaker(drawing, 'FL').querySelector('path.shape')?.getAttribute('d');
    const square = speaker(drawing, 'Sub 1').querySelector('path.shape')?.getAttribute('d');
    expect(cone).not.toBe(square);
  });

  it('shows whose turn it is while a take plays', async () => {
    const drawing = await drawn('5.1', 288);
    drawing.playing = 'FC';
    await drawing.updateComplete;
    expect(speaker(drawing, 'FC').classList.contains('playing')).toBe(true);
    expect(speaker(drawing, 'FL').classList.contains('playing')).toBe(false);
  });
});
