import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';
import { chartStyles } from './chart-styles';
import { Kept } from '../kept';
import './copy-button';

/** Numbers that are written only when someone looks at them. */
export interface NumbersBehind {
  /** Heads and rows as shown; the first cell of each row names it. */
  readonly table: () => {
    readonly head: readonly string[];
    readonly rows: readonly (readonly string[])[];
  };
  /** Tab-separated text for the clipboard. */
  readonly copy: () => string;
}

/** The numbers behind a chart: a table that opens on demand, and all of them to copy. */
@customElement('ll-number-table')
export class NumberTable extends LitElement {
  static override styles = [
    sharedStyles,
    chartStyles,
    css`
      :host {
        position: relative;
      }

      .bar {
        margin: var(--space-2) 0 0;
      }

      details {
        flex: 1 1 9rem;
        min-width: 0;
      }

      details[open] {
        flex-basis: 100%;
      }

      summary {
        cursor: pointer;
        color: var(--soft);
        font-size: var(--text-small);
        min-height: 2rem;
        white-space: nowrap;
        align-content: center;
      }

      .scroll {
        max-height: 18rem;
        overflow: auto;
        border: var(--line) solid var(--rule);
      }

      table {
        font-size: var(--text-small);
        white-space: nowrap;
      }

      thead th {
        position: sticky;
        top: 0;
        background: var(--sheet);
      }
    `,
  ];

  /** What the table holds, as its caption says it. */
  @property() caption = '';
  /** Null while there are none. */
  @property({ attribute: false }) numbers: NumbersBehind | null = null;

  @state() private open = false;
  private readonly written = new Kept<ReturnType<NumbersBehind['table']>>();

  override render() {
    return html`<div class="bar">
      <details
        .open=${this.open}
        @toggle=${(event: Event) => {
          this.open = (event.currentTarget as HTMLDetailsElement).open;
        }}
      >
        <summary>${msg('Numbers behind this chart')}</summary>
        ${this.open && this.numbers ? this.table(this.numbers) : nothing}
      </details>
      <ll-copy-button .text=${this.numbers?.copy ?? ''}></ll-copy-button>
    </div>`;
  }

  private table(numbers: NumbersBehind) {
    const { head, rows } = this.written.of([numbers], numbers.table);
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${this.caption}>
      <table>
        <caption class="unseen">
          ${this.caption}
        </caption>
        <thead>
          <tr>
            ${head.map((text) => html`<th scope="col">${text}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            ([name = '', ...cells]) =>
              html`<tr>
                <th scope="row" class="num">${name}</th>
                ${cells.map((cell) => html`<td class="num">${cell}</td>`)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-number-table': NumberTable;
  }
}
