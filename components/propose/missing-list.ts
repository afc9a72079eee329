import { msg, str } from '@lit/localize';
import { html, nothing } from 'lit';
import type { MissingSetting } from '../../src/proposal/proposal';

/** What could not be proposed, each with the one action that would settle it. */
export function missingList(missing: readonly MissingSetting[]) {
  if (missing.length === 0) return nothing;
  return html`<details class="missing">
    <summary>
      ${
        missing.length === 1
          ? msg('One thing could not be proposed')
          : msg(str`${missing.length} things could not be proposed`)
      }
    </summary>
    <ul class="list">
      ${missing.map(({ sentence, action }) => html`<li>${sentence} <b>${action}</b></li>`)}
    </ul>
  </details>`;
}
