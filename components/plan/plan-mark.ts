import { svg, type SVGTemplateResult } from 'lit';

/** Whether something was found right or wrong about a speaker, and what in words. */
export interface PlanMark {
  readonly right: boolean;
  readonly words: string;
}

/** A tick or a cross at the lower left of a speaker's symbol. */
export function drawMark({ right, words }: PlanMark): SVGTemplateResult {
  const path = right ? 'M-17 8l3.5 3.5 6-7.5' : 'M-16.5 4.5l8 8M-8.5 4.5l-8 8';
  return svg`<g class="mark ${right ? 'right' : 'wrong'}">
    <title>${words}</title>
    <circle cx="-12.5" cy="8" r="7.5"></circle>
    <path d=${path}></path>
  </g>`;
}
