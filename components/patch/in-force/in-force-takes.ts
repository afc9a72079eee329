import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { declareForTakes, takesWithOther } from '../../../src/session/follow-declared';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';

/** Takes of this position that were played with other settings than are declared now. */
@customElement('ll-in-force-takes')
export class InForceTakes extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .ghost {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    if (state.document.rig === 'practice') {
      return html`<p class="soft">
        ${msg('The practice room has no processor: nothing is taken out of its takes.')}
      </p>`;
    }
    const { length } = takesWithOther(state.document);
    if (length === 0) {
      return html`<p class="soft">
        ${msg('Each take remembers what was declared when it was played; what is typed later leaves it alone.')}
      </p>`;
    }
    return html`<p>
        ${msg(str`${length === 1 ? msg('One take') : msg(str`${length} takes`)} at ${state.document.position.name} ${length === 1 ? msg('was') : msg('were')} played while something else was declared. If this was in force by then, they are read again with it.`)}
      </p>
      <button
        class="ghost"
        ?disabled=${state.activity.kind !== 'idle'}
        @click=${() => this.bench?.change(msg('Declare settings for earlier takes'), declareForTakes)}
      >
        ${msg('It was in force by then')}
      </button>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-in-force-takes': InForceTakes;
  }
}
