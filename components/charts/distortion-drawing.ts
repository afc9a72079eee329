import { css, nothing, svg } from 'lit';
import { namedCurves } from './distortion-curves';
import type { DistortionInput, DistortionLayout } from './distortion-layout';
import { isNumber, numberText } from '../../src/locale/number-text';
import type { ChartLabel } from './response-labels';

const at = (value: number): string => value.toFixed(1);

/** Lines and hatching of the distortion chart. */
export const distortionStyles = css`
  .bar {
    align-items: start;
  }

  /* The chart stays where it is when the cursor reads more. */
  .narrow .readout {
    min-height: 8.5em;
    align-content: start;
  }

  .groups {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
  }

  .product {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.4;
    stroke-linecap: round;
    stroke-linejoin: round;
  }

  .product.total {
    stroke-width: 2.6;
  }

  .product.h3 {
    stroke-dasharray: 8 4;
  }

  .product.h4,
  .product.h5 {
    stroke: var(--soft);
  }

  .product.h5 {
    stroke-dasharray: 2 4;
  }

  .hatch {
    stroke: var(--edge);
    stroke-width: 1;
  }

  .hidden {
    fill: url(#hatch);
    opacity: 0.55;
  }
`;

/** The chart's still part: grid, hidden stretches, lines, labels. */
export function drawDistortion(
  { unit }: Pick<DistortionInput, 'unit'>,
  layout: DistortionLayout,
  labels: readonly ChartLabel[],
  colour: string,
) {
  const { plot, levels, frequencies, height, hidden, lines } = layout;
  return svg`
    <defs>
      <clipPath id="plot"><rect x=${plot.left} y=${plot.top}
        width=${at(plot.right - plot.left)} height=${plot.bottom - plot.top}></rect></clipPath>
      <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"><line class="hatch" x1="0" x2="0" y1="0" y2="7"></line></pattern>
    </defs>
    ${levels.map(
      ({ text, y }) => svg`
        <line class="grid" x1=${plot.left} x2=${at(plot.right)} y1=${at(y)} y2=${at(y)}></line>
        <text class="tick" x=${plot.left - 6} y=${at(y + 4)} text-anchor="end">${text}</text>`,
    )}
    ${frequencies.map(
      ({ x, text }) => svg`
        <line class="grid" x1=${at(x)} x2=${at(x)} y1=${plot.top} y2=${plot.bottom}></line>
        <text class="tick" x=${at(x)} y=${height - 7} text-anchor="middle">${text}</text>`,
    )}
    <text class="tick" x=${plot.left - 6} y="12" text-anchor="end">${unit === 'db' ? 'dB' : '%'}</text>
    <text class="tick" x=${plot.left - 6} y=${height - 7} text-anchor="end">Hz</text>
    <g clip-path="url(#plot)">
      ${hidden.map(({ by, path }) => svg`<path class="hidden" data-by=${by} d=${path}></path>`)}
      ${lines
        .toReversed()
        .map(
          ({ id, path }) =>
            svg`<path class="product ${id}" style=${id === 'total' ? `stroke:${colour}` : ''} d=${path}></path>`,
        )}
    </g>
    ${labels.map(
      ({ id, text, x, y, colour: fill, strong }) => svg`<text class="halo ${strong ? 'strong' : ''}"
        data-label=${id} x=${at(x)} y=${at(y + 4)} style="fill:${fill}">${text}</text>`,
    )}`;
}

/** The cursor's line and a dot on every line that is told there. */
export function drawDistortionCursor(
  { curves }: Pick<DistortionInput, 'curves'>,
  { plot, scales }: DistortionLayout,
  hz: number | null,
) {
  if (hz === null) return nothing;
  const x = at(scales.x(hz));
  const i = curves.hz.indexOf(hz);
  return svg`<g class="cursor-mark" data-hz=${numberText(hz, 2)}>
    <line class="cursor-line" x1=${x} x2=${x} y1=${plot.top} y2=${plot.bottom}></line>
    ${namedCurves(curves).map(({ curve }) => {
      const db = curve.db[i];
      const y = isNumber(db) ? scales.y(db) : null;
      return y === null || y < plot.top || y > plot.bottom
        ? nothing
        : svg`<circle class="cursor-dot" cx=${x} cy=${at(y)} r="4" fill="var(--ink)"></circle>`;
    })}
  </g>`;
}
