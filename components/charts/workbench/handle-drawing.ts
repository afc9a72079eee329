import { nothing, svg } from 'lit';
import type { CurveLayout } from '../curve/curve-layout';
import { textWidth } from '../text-width';
import type { ChartHandle } from './chart-handle';

const at = (value: number): string => value.toFixed(1);
/** Text lines over the plot: the nearer one names handles at the bottom. */
const rows = { bottom: 12, top: 30 } as const;

/** Pixels over the plot for the handles' names. */
export const handleRoom = 44;

/** A handle's line, its knob, its name and, dashed, where it would stand as proposed. */
export function drawHandle(handle: ChartHandle, layout: CurveLayout, font: string) {
  const { plot, xAt } = layout;
  const { id, text, hz, proposedHz, end } = handle;
  const clamp = (x: number) => Math.max(plot.left, Math.min(plot.right, x));
  const x = clamp(xAt(hz));
  const inside = proposedHz !== null && xAt(proposedHz) === clamp(xAt(proposedHz));
  const half = textWidth(text, font) / 2;
  const middle = Math.max(plot.left + half, Math.min(plot.right - half, x));
  const first = rows[end] + 4;
  return svg`
    ${
      inside
        ? svg`<line class="proposed" data-proposed=${id} x1=${at(xAt(proposedHz))} x2=${at(xAt(proposedHz))}
            y1=${plot.top} y2=${plot.bottom}></line>`
        : nothing
    }
    <line class="handle-line ${end}" x1=${at(x)} x2=${at(x)} y1=${first} y2=${plot.bottom}></line>
    ${
      end === 'bottom'
        ? svg`<circle class="knob" cx=${at(x)} cy=${plot.bottom} r="6"></circle>`
        : svg`<rect class="knob" x=${at(x - 6)} y=${plot.top - 6} width="12" height="12"></rect>`
    }
    <text class="strong halo handle-text ${end}" x=${at(middle)} y=${rows[end]}
      text-anchor="middle">${text}</text>`;
}
