import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, Prompt } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';

/** Where Enter already means something. */
const takesEnter = () => msg('button, a, input, select, textarea, summary');

/** What to do in the room before the next take: numbered steps, one way on, one way out. */
@customElement('ll-waiting-card')
export class WaitingCard extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: block;
      }

      section {
        display: grid;
        gap: var(--space-4);
        padding: var(--space-5);
        border: 3px solid var(--signal);
        border-radius: var(--radius);
        background: var(--wash);
      }

      h2 {
        font-size: var(--text-title);
        text-wrap: balance;
      }

      ol {
        display: grid;
        gap: var(--space-3);
        padding: 0;
        list-style: none;
        counter-reset: step;
        font-size: var(--text-strong);
      }

      li {
        display: grid;
        grid-template-columns: 2rem minmax(0, 1fr);
        gap: var(--space-3);
        align-items: baseline;
        counter-increment: step;
      }

      li::before {
        content: counter(step);
        font-family: var(--mono);
        font-weight: 700;
        line-height: 2rem;
        text-align: center;
        border: var(--line-strong) solid var(--ink);
        border-radius: 50%;
      }

      .row {
        display: flex;
        flex-wrap: wrap;
        gap: var(--space-3);
      }

      .go {
        min-height: 3.5rem;
        padding-inline: var(--space-6);
        font-size: var(--text-strong);
      }

      .row .ghost {
        min-height: 3.5rem;
      }

      kbd {
        font: inherit;
        font-weight: 400;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);
  private shown: Prompt | null = null;

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.press);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.press);
  }

  protected override updated(): void {
    const prompt = this.prompt;
    if (prompt === this.shown) return;
    this.shown = prompt;
    if (prompt && !document.activeElement?.matches('input')) {
      this.renderRoot.querySelector<HTMLElement>('.go')?.focus();
    }
  }

  private get prompt(): Prompt | null {
    const activity = this.follow.state?.activity;
    return activity?.kind === 'waiting' ? activity.prompt : null;
  }

  private readonly press = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' || event.repeat || !this.prompt) return;
    const elsewhere = event
      .composedPath()
      .some((one) => one instanceof Element && one.matches(takesEnter()));
    if (!elsewhere) this.bench?.proceed();
  };

  override render() {
    const { prompt } = this;
    if (!prompt) return nothing;
    return html`<section aria-labelledby="what" role="alertdialog">
      <h2 id="what">${prompt.title}</h2>
      <ol>
        ${prompt.steps.map((step) => html`<li><span>${step}</span></li>`)}
      </ol>
      <div class="row">
        <button class="go" @click=${() => this.bench?.proceed()}>
          ${msg(html`Done, go on <kbd>Enter</kbd>`)}
        </button>
        <button class="ghost" @click=${() => this.bench?.stop()}>${msg('Stop here')}</button>
      </div>
      <p class="small">${msg('What was taken so far is kept.')}</p>
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-waiting-card': WaitingCard;
  }
}
