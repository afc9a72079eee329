import { msg, str } from '@lit/localize';
import { html, nothing } from 'lit';
import { placeText, valuesAt } from './curve-numbers';
import type { CurveAxes, CurveTrace } from './curve-trace';

/** The lines' names, and what the cursor reads of each while it stands somewhere. */
export function curveNames(traces: readonly CurveTrace[], axes: CurveAxes, at: number | null) {
  const values = at === null ? null : valuesAt(traces, axes, at);
  return html`<div class="names" aria-hidden="true">
    ${traces.map(
      ({ name, colour, stroke, weight = '' }, n) =>
        html`<span>
          <svg>
            <path class="trace ${stroke} ${weight}" stroke=${colour} d="M0 5H26"></path>
          </svg>
          ${name} ${values ? html`<b class="num">${values[n]?.text}</b>` : nothing}
        </span>`,
    )}
    ${at === null ? nothing : html`<span class="num">${msg(str`at ${placeText(axes, at)}`)}</span>`}
  </div>`;
}
