import { msg } from '@lit/localize';
import { LitElement, css, html, nothing, svg, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sharedStyles } from '../theme/shared-styles';
import { stageNames, type StageId, type StageStanding } from './stages';

/** The rail of five stages: where you are, what is done, what each still lacks. */
@customElement('ll-rail')
export class Rail extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      nav {
        display: flex;
        height: 100%;
      }

      a {
        display: flex;
        gap: var(--space-2);
        align-items: center;
        justify-content: center;
        flex: 1 1 auto;
        min-height: var(--target);
        padding: 0 var(--space-4);
        border-block: 3px solid transparent;
        color: var(--soft);
        text-decoration: none;
        white-space: nowrap;
      }

      a:hover {
        color: var(--ink);
        border-bottom-color: var(--rule);
      }

      a[aria-current] {
        color: var(--ink);
        font-weight: 700;
        border-bottom-color: var(--signal);
      }

      .done {
        color: var(--ink);
      }

      .number {
        font-family: var(--mono);
        font-size: var(--text-small);
        width: 1ch;
      }

      svg {
        width: 0.8rem;
        height: 0.8rem;
        margin-inline: -0.1rem;
        fill: none;
        stroke: var(--ok);
        stroke-width: 2.4;
      }

      :focus-visible {
        outline-offset: -3px;
      }

      @media (max-width: 68rem) {
        a {
          padding: 0 var(--space-3);
        }
      }

      @media (max-width: 45rem) {
        a {
          padding: 0 var(--space-1);
          gap: 0.3rem;
          font-size: var(--text-small);
        }
      }
    `,
  ];

  @property({ attribute: false }) standings: readonly StageStanding[] = [];
  @property({ attribute: false }) here: StageId = 'plan';

  protected override render(): TemplateResult {
    return html`<nav aria-label=${msg('Stages')}>
      ${this.standings.map(
        (one) =>
          html`<a
            href="#${one.id}"
            class=${one.done ? 'done' : ''}
            aria-current=${one.id === this.here ? 'step' : nothing}
            title=${one.missing ?? msg('Nothing missing.')}
          >
            ${one.done ? tick : html`<span class="number">${one.number}</span>`}
            <span>${stageNames[one.id]}</span>
            ${one.done ? html`<span class="unseen">${msg(', done')}</span>` : nothing}
          </a>`,
      )}
    </nav>`;
  }
}

const tick = html`<svg viewBox="0 0 12 12" aria-hidden="true">
  ${svg`<path d="M1 6.5l3.5 3.5L11 2"></path>`}
</svg>`;

declare global {
  interface HTMLElementTagNameMap {
    'll-rail': Rail;
  }
}
