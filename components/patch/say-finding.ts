import { html } from 'lit';
import type { BenchState } from '../../src/session/bench';
import { adviseRewiring } from '../../src/wirecheck/advise-rewiring';
import type { WiringFinding } from '../../src/wirecheck/wiring-finding';
import { outputNamer } from './wiring/wiring-now';

/** A finding and the steps that put it right; see findingStyles. */
export function sayFinding(finding: WiringFinding, state: BenchState) {
  const { sentence, steps } = adviseRewiring(finding, outputNamer(state));
  return html`<div class="finding">
    <h3>${sentence}</h3>
    <ol>
      ${steps.map((step) => html`<li>${step}</li>`)}
    </ol>
  </div>`;
}
