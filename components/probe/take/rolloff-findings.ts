import { msg } from '@lit/localize';
import { css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import type { Readings } from '../../../src/reading/reading';
import type { Bench, BenchState } from '../../../src/session/bench';
import { modelsOf } from '../../../src/system/speaker-models';
import { BenchController } from '../../bench-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { findingsStyles } from './findings-styles';
import { contradictions, doubts, estimateText, modelRows } from './rolloff-words';
import './speaker-models';
import { currentReadings } from './take-lanes';

/** Where each model rolls off, read together from all seats, beside what this position says alone. */
@customElement('ll-rolloff-findings')
export class RolloffFindings extends LaterElement {
  static override styles = [
    sharedStyles,
    findingsStyles,
    css`
      td span {
        display: block;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override willUpdate(): void {
    const { state } = this.follow;
    this.hidden = !state || !currentReadings(state) || state.document.position.kind === 'close';
  }

  override render() {
    const { state } = this.follow;
    const readings = state && currentReadings(state);
    if (!state || !readings || this.hidden) return nothing;
    const { channels } = readings;
    return html`<section class="sheet" aria-labelledby="rolloffs">
      <h2 id="rolloffs">${msg('Roll-offs, read together')}</h2>
      ${lacking(readings, state)} ${table(state, readings)}
      ${contradictions(channels, state.together).map(
        (sentence) => html`<p class="signal">${sentence}</p>`,
      )}
      ${doubts(state.together).map((sentence) => html`<p>${sentence}</p>`)}
      <details>
        <summary>${msg('Models and sheets')}</summary>
        <ll-speaker-models .bench=${this.bench}></ll-speaker-models>
      </details>
    </section>`;
  }
}

function table({ layout, document, together }: BenchState, { channels }: Readings) {
  const rows = modelRows(modelsOf(layout, document.models), channels, together);
  return html`<div
    class="scroll"
    tabindex="0"
    role="region"
    aria-label=${msg('Roll-offs by model')}
  >
    <table>
      <thead>
        <tr>
          <th scope="col">${msg('Model')}</th>
          <th scope="col" class="left">${msg('Read from')}</th>
          <th scope="col">−3 dB, 90 %</th>
          <th scope="col">−6 dB, 90 %</th>
          <th scope="col">−10 dB, 90 %</th>
          <th scope="col">${msg('−3 dB alone, here')}</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ({ speakers, from, joint, alone }) =>
            html`<tr>
              <th scope="row" class="num">${speakers}</th>
              <td class="left">${from}</td>
              ${[joint?.f3Hz, joint?.f6Hz, joint?.f10Hz].map(
                (one) => html`<td class="num">${one ? estimateText(one) : '–'}</td>`,
              )}
              <td class="num">${alone.map((text) => html`<span>${text}</span>`)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

/** Takes that older versions read hold no bass to read together. */
function lacking({ channels }: Readings, { together }: BenchState) {
  if (together.length > 0 || channels.some(({ bassBands }) => bassBands)) return nothing;
  return html`<p class="soft">
    ${msg('These takes hold no bass that could be read together, because it was not kept or a crossover was in force. Repeat the take at full range.')}
  </p>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-rolloff-findings': RolloffFindings;
  }
}
