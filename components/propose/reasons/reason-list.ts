import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Ground, Reason } from '../../../src/proposal/reason';
import type { Readings } from '../../../src/reading/reading';
import { buttonStyles } from '../../controls/button-styles';
import { askToSelect } from '../../events';
import { sharedStyles } from '../../theme/shared-styles';
import { groundText } from './ground-text';

/** Sentences that say why; each opens to the readings it rests on and to the rule behind it. */
@customElement('ll-reasons')
export class ReasonList extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      ul {
        display: grid;
        gap: var(--space-1);
        padding: 0;
        list-style: none;
      }

      summary {
        text-wrap: pretty;
      }

      .plain-line {
        padding-inline-start: 1.05rem;
      }

      .grounds {
        display: grid;
        gap: var(--space-1);
        margin-block: var(--space-1);
        padding: var(--space-2) var(--space-3);
        border-inline-start: 3px solid var(--rule);
        font-size: var(--text-small);
      }

      .plain {
        min-height: 1.5rem;
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) reasons: readonly Reason[] = [];
  @property({ attribute: false }) readings: Readings | null = null;
  /** The rule the sentences follow, with where it comes from. */
  @property() rule = '';

  override render() {
    if (this.reasons.length === 0) return nothing;
    return html`<ul>
      ${this.reasons.map((reason) => html`<li>${this.line(reason)}</li>`)}
      ${
        this.rule === ''
          ? nothing
          : html`<li>
              <details class="rule">
                <summary class="soft">${msg('The rule behind this')}</summary>
                <div class="grounds"><p>${this.rule}</p></div>
              </details>
            </li>`
      }
    </ul>`;
  }

  private line({ sentence, grounds }: Reason) {
    if (grounds.length === 0) return html`<p class="plain-line">${sentence}</p>`;
    return html`<details>
      <summary>${sentence}</summary>
      <div class="grounds">${grounds.map((ground) => this.ground(ground))}</div>
    </details>`;
  }

  private ground({ channel, field }: Ground) {
    const reading = this.readings?.channels.find((one) => one.channel === channel) ?? null;
    return html`<p>
      <button class="plain num" @click=${() => askToSelect(this, channel)}>${channel}</button>
      ${groundText(field, reading)}
      <a href="#probe/inspect" @click=${() => askToSelect(this, channel)}>${msg('Look into it')}</a>
    </p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-reasons': ReasonList;
  }
}
