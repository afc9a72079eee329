import { svg } from 'lit';
import type { CurveLayout } from './curve-layout';
import type { CurveAxes } from './curve-trace';

const at = (value: number): string => value.toFixed(1);

/** The plot's clip path, which lines inside refer to as #plot. */
export function drawClip({ plot }: CurveLayout) {
  return svg`<defs><clipPath id="plot"><rect x=${plot.left} y=${plot.top}
    width=${at(plot.right - plot.left)} height=${plot.bottom - plot.top}></rect></clipPath></defs>`;
}

/** Grid lines with their numbers and units. */
export function drawCurveGrid({ plot, columns, rows, height }: CurveLayout, axes: CurveAxes) {
  return svg`
    ${rows.map(
      ({ text, y }) => svg`
        <line class="grid" x1=${plot.left} x2=${at(plot.right)} y1=${at(y)} y2=${at(y)}></line>
        <text class="tick" x=${plot.left - 6} y=${at(y + 4)} text-anchor="end">${text}</text>`,
    )}
    ${columns.map(
      ({ x, text }) => svg`
        <line class="grid" x1=${at(x)} x2=${at(x)} y1=${plot.top} y2=${plot.bottom}></line>
        <text class="tick" x=${at(x)} y=${height - 7} text-anchor="middle">${text}</text>`,
    )}
    <text class="tick" x=${plot.left - 6} y=${plot.top - 13} text-anchor="end">${axes.y.unit}</text>
    <text class="tick" x=${plot.left - 10} y=${height - 7} text-anchor="end">${
      axes.x.kind === 'frequency' ? 'Hz' : 'ms'
    }</text>`;
}

/** The lines, the first of them on top. */
export function drawLines({ lines }: CurveLayout) {
  return svg`<g clip-path="url(#plot)">
    ${lines.toReversed().map(
      ({ trace, path }) =>
        svg`<path class="trace ${trace.stroke} ${trace.weight ?? ''}" data-name=${trace.name}
            stroke=${trace.colour} d=${path}></path>`,
    )}
  </g>`;
}

/** The cursor, a line from top to bottom of the plot at a place of the axis. */
export function drawCursorLine({ plot, xAt }: CurveLayout, place: number) {
  return svg`<line class="cursor-line" x1=${at(xAt(place))} x2=${at(xAt(place))}
    y1=${plot.top} y2=${plot.bottom}></line>`;
}
