import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import type { Wiring } from '../../../src/system/wiring/wiring';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { PrintSheet } from '../../controls/print-sheet';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { patchCautions } from '../cautions';
import { wiringFindings } from '../findings';
import { patchSheetAddress } from '../patch-sheets';
import './take-outputs';
import './wiring-drawing';
import { wiringPage } from './wiring-list';
import { wiringNow } from './wiring-now';
import './wiring-refusal';

/** Which output feeds which speaker: drawn, refused with the reason, printed as a list. */
@customElement('ll-wiring-sheet')
export class WiringSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      .print {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  constructor() {
    super();
    new PrintSheet(this, () => {
      const { state } = this.follow;
      const wiring = state && wiringNow(state);
      const sheet = state?.document.sheet;
      return state && sheet && wiring?.wired
        ? wiringPage(state.document.name, state.layout, sheet, wiring)
        : null;
    });
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { sheet } = state.document;
    const wiring = wiringNow(state);
    const findings = wiringFindings(state.layout, state.readings);
    return html`<div class="sheets">
      ${sheet && wiring ? this.outputs(state, sheet, wiring) : this.withoutSheet()}
      ${
        findings.length === 0
          ? nothing
          : html`<section class="sheet wide" aria-labelledby="findings">
              <h2 id="findings" class="signal">${msg('What the last take asks to change')}</h2>
              <ul class="list">
                ${findings.map((sentence) => html`<li>${sentence}</li>`)}
              </ul>
            </section>`
      }
      <section class="sheet" aria-labelledby="order">
        <h2 id="order">${msg('Channels of the take, in the order of its WAV file')}</h2>
        <ll-take-outputs
          .layout=${state.layout}
          .readings=${state.readings}
          .selected=${this.selected}
        ></ll-take-outputs>
      </section>
      <section class="sheet" aria-labelledby="cautions">
        <h2 id="cautions">${msg('Moving plugs')}</h2>
        <ul class="list">
          ${patchCautions(state.layout).map((caution) => html`<li>${caution}</li>`)}
        </ul>
      </section>
    </div>`;
  }

  private outputs(state: BenchState, sheet: ProcessorSheet, wiring: Wiring) {
    return html`<section class="sheet wide" aria-labelledby="outputs">
        <h2 id="outputs">${sheet.name}</h2>
        ${
          sheet.invented
            ? html`<p class="signal small">
                ${msg('Invented: it describes no existing processor.')}
              </p>`
            : nothing
        }
        <ll-wiring-drawing
          .layout=${state.layout}
          .sheet=${sheet}
          .wiring=${wiring}
          .selected=${this.selected}
        ></ll-wiring-drawing>
        ${
          wiring.wired
            ? html`<button class="ghost print" @click=${() => window.print()}>
                ${msg('Print the wiring as a list')}
              </button>`
            : nothing
        }
      </section>
      ${
        wiring.wired
          ? nothing
          : html`<section class="sheet wide" aria-label=${msg('Why it cannot be wired')}>
              <ll-wiring-refusal .bench=${this.bench} .refusal=${wiring}></ll-wiring-refusal>
            </section>`
      }`;
  }

  private withoutSheet() {
    return html`<section class="sheet wide" aria-label=${msg('No processor yet')}>
      <p>
        ${msg('Which output feeds which speaker depends on the processor: what each of its outputs can carry, and what excludes what. Its sheet says so.')}
      </p>
      <a class="go print" href=${patchSheetAddress('sheet')}>${msg('Choose the processor')}</a>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-wiring-sheet': WiringSheet;
  }
}
