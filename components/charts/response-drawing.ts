import { nothing, svg } from 'lit';
import { curveAt } from './curve-path';
import { isNumber, numberText, signedText } from '../../src/locale/number-text';
import type { ChartLabel } from './response-labels';
import type { ResponseInput, ResponseLayout } from './response-layout';

const at = (value: number): string => value.toFixed(1);

function drawGrid({ plot, frequencies, levels, height }: ResponseLayout) {
  return svg`
    ${levels.map(
      ({ db, y }) => svg`
        <line class="grid" x1=${plot.left} x2=${at(plot.right)} y1=${at(y)} y2=${at(y)}></line>
        <text class="tick" x=${plot.left - 6} y=${at(y + 4)} text-anchor="end">${signedText(db)}</text>`,
    )}
    ${frequencies.map(
      ({ x, text }) => svg`
        <line class="grid" x1=${at(x)} x2=${at(x)} y1=${plot.top} y2=${plot.bottom}></line>
        <text class="tick" x=${at(x)} y=${height - 7} text-anchor="middle">${text}</text>`,
    )}
    <text class="tick" x=${plot.left - 6} y="12" text-anchor="end">dB</text>
    <text class="tick" x=${plot.left - 6} y=${height - 7} text-anchor="end">Hz</text>`;
}

function drawCurves(input: ResponseInput, layout: ResponseLayout) {
  const { noise, fit, lines } = layout;
  const colour = input.traces[0]?.colour ?? 'var(--ink)';
  return svg`
    ${
      noise
        ? svg`<path class="noise-area" d=${noise.area}></path><path class="noise" d=${noise.line}></path>`
        : nothing
    }
    ${fit ? svg`<path class="fit-band" fill=${colour} d=${fit.band}></path>` : nothing}
    ${[...lines].reverse().map(
      (line, i) => svg`<path
          class="curve ${i === lines.length - 1 ? 'lead' : 'partner'}"
          data-channel=${line.channel}
          stroke=${line.colour}
          d=${line.path}
        ></path>`,
    )}
    ${fit ? svg`<path class="fit" stroke=${colour} d=${fit.line}></path>` : nothing}`;
}

function drawMarks(input: ResponseInput, { scales }: ResponseLayout) {
  const colour = input.traces[0]?.colour ?? 'var(--ink)';
  return (input.traces[0]?.marks ?? []).map(({ downDb, levelDb, hz, lowHz, highHz }) => {
    const y = scales.y(levelDb);
    const [low, middle, high] = [scales.x(lowHz), scales.x(hz), scales.x(highHz)];
    return svg`<g class="mark" data-down=${downDb} stroke=${colour}>
      <path class="whisker" fill="none"
        d="M${at(low)} ${at(y - 4)}V${at(y + 4)}M${at(low)} ${at(y)}H${at(high)}M${at(high)} ${at(y - 4)}V${at(y + 4)}"></path>
      <circle cx=${at(middle)} cy=${at(y)} r="4" fill=${colour} stroke="var(--sheet)" stroke-width="1.5"></circle>
    </g>`;
  });
}

function drawCrossover({ crossoverHz, proposedHz }: ResponseInput, layout: ResponseLayout) {
  const { plot, scales } = layout;
  const inside = (hz: number | null): hz is number =>
    isNumber(hz) && scales.x(hz) >= plot.left && scales.x(hz) <= plot.right;
  const line = (name: string, hz: number) => svg`<line class=${name}
    x1=${at(scales.x(hz))} x2=${at(scales.x(hz))} y1=${plot.top - 3} y2=${plot.bottom}></line>`;
  return svg`
    ${inside(proposedHz) && proposedHz !== crossoverHz ? line('proposed', proposedHz) : nothing}
    ${
      inside(crossoverHz)
        ? svg`${line('crossover', crossoverHz)}
          <circle class="knob" cx=${at(scales.x(crossoverHz))} cy=${plot.bottom} r="5"></circle>`
        : nothing
    }`;
}

function drawLabels(labels: readonly ChartLabel[]) {
  return labels.map(
    ({ id, text, x, y, colour, strong }) => svg`<text class="halo ${strong ? 'strong' : ''}"
      data-label=${id} x=${at(x)} y=${at(y + 4)} style="fill:${colour}">${text}</text>`,
  );
}

/** The chart's still part, in drawing order: grid, curves, crossover, marks, labels. */
export function drawResponse(
  input: ResponseInput,
  layout: ResponseLayout,
  labels: readonly ChartLabel[],
) {
  const { plot } = layout;
  return svg`
    <defs><clipPath id="plot"><rect x=${plot.left} y=${plot.top}
      width=${at(plot.right - plot.left)} height=${plot.bottom - plot.top}></rect></clipPath></defs>
    ${drawGrid(layout)}
    <g clip-path="url(#plot)">${drawCurves(input, layout)}</g>
    ${drawCrossover(input, layout)}
    <g clip-path="url(#plot)">${drawMarks(input, layout)}</g>
    ${drawLabels(labels)}`;
}

/** The cursor's line and a dot on every measured curve. */
export function drawCursor(input: ResponseInput, layout: ResponseLayout, hz: number | null) {
  if (hz === null) return nothing;
  const { plot, scales } = layout;
  const x = at(scales.x(hz));
  return svg`<g class="cursor-mark" data-hz=${numberText(hz, 2)}>
    <line class="cursor-line" x1=${x} x2=${x} y1=${plot.top} y2=${plot.bottom}></line>
    ${input.traces.map(({ colour, curves: { response } }) => {
      const db = curveAt(response.hz, response.db, hz);
      const y = isNumber(db) ? scales.y(db) : null;
      return y === null || y < plot.top || y > plot.bottom
        ? nothing
        : svg`<circle class="cursor-dot" cx=${x} cy=${at(y)} r="4.5" fill=${colour}></circle>`;
    })}
  </g>`;
}
