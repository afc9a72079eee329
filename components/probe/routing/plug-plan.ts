import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { TakePart } from '../../../src/take/take-plan';
import { sharedStyles } from '../../theme/shared-styles';
import { plugRows } from './route-preview';

/** What every output plays in each take: a row an output, a column a take. */
@customElement('ll-plug-plan')
export class PlugPlan extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: block;
      }

      table {
        width: auto;
        min-width: min(100%, 20rem);
      }

      td,
      th {
        text-align: left;
        white-space: nowrap;
      }

      .moved {
        background: var(--wash);
        color: var(--signal);
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) parts: readonly TakePart[] = [];

  override render() {
    const { parts } = this;
    if (parts.length === 0) return nothing;
    const rows = plugRows(parts);
    const moves = rows.some(({ cells }) => cells.some(({ moved }) => moved));
    return html`<div
        class="scroll"
        tabindex="0"
        role="region"
        aria-label=${msg('What each output plays')}
      >
        <table>
          <thead>
            <tr>
              <th scope="col">${msg('Output')}</th>
              ${
                parts.length === 1
                  ? html`<th scope="col">${msg('Plays')}</th>`
                  : parts.map(
                      (_, index) => html`<th scope="col">${msg(str`Take ${index + 1}`)}</th>`,
                    )
              }
            </tr>
          </thead>
          <tbody>
            ${rows.map(
              ({ output, cells }) =>
                html`<tr>
                  <th scope="row" class="num">${output + 1}</th>
                  ${cells.map(
                    ({ channel, moved }) =>
                      html`<td class="num ${moved ? 'moved' : ''}">
                        ${channel ?? '–'}${moved ? html`<span class="unseen">${msg(', move its plug here')}</span>` : nothing}
                      </td>`,
                  )}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${
        moves
          ? html`<p class="soft small">
              ${msg('Marked: its plug is moved there before that take. The tool stops and says so.')}
            </p>`
          : nothing
      }`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-plug-plan': PlugPlan;
  }
}
