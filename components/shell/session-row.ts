import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { StoredSession } from '../../src/session/shelf/stored-session';
import { buttonStyles } from '../controls/button-styles';
import { dateText } from '../../src/locale/date-text';
import { sharedStyles } from '../theme/shared-styles';
import './session-name';
import { sessionFacts } from './session-words';

/** What a person wants of a session in the list. */
export type SessionWish =
  | { readonly what: 'open' | 'compare' | 'duplicate' | 'delete' | 'restore' | 'remove' }
  | { readonly what: 'rename'; readonly name: string };

/** One session of the list: its name, what it is, and what can be done with it. Fires `ll-wish`. */
@customElement('ll-session-row')
export class SessionRow extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        justify-content: space-between;
        gap: var(--space-1) var(--space-3);
        padding: var(--space-2) 0;
        border-bottom: var(--line) solid var(--rule);
      }

      .what {
        flex: 1 1 15rem;
        min-width: 0;
        overflow-wrap: anywhere;
      }

      .name {
        font-weight: 700;
      }

      ll-session-name {
        display: block;
        font-weight: 700;
      }

      p,
      .name {
        padding-left: calc(var(--space-2) + var(--line));
      }

      .buttons {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-2);
      }

      .ghost {
        padding-inline: var(--space-3);
        font-size: var(--text-small);
      }
    `,
  ];

  @property({ attribute: false }) session: StoredSession | null = null;
  /** Whether it is the one on the bench. */
  @property({ type: Boolean }) here = false;
  @property({ type: Boolean }) disabled = false;

  protected override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (!session) return nothing;
    return html`<div class="what">
        ${
          session.deleted || session.summary === null
            ? html`<div class="name">${session.name}</div>`
            : html`<ll-session-name
                .name=${session.name}
                .label=${msg(str`Name of session ${session.name}`)}
                @ll-rename=${(event: CustomEvent<string>) => {
                  event.stopPropagation();
                  this.wish({ what: 'rename', name: event.detail });
                }}
              ></ll-session-name>`
        }
        ${this.renderFacts(session)}
      </div>
      <div class="buttons">${this.renderButtons(session)}</div>`;
  }

  override focus(): void {
    const harmless = this.renderRoot.querySelector<HTMLElement>('[data-wish="restore"]');
    (harmless ?? this.renderRoot.querySelector('button'))?.focus();
  }

  private renderFacts({ summary, problem }: StoredSession): TemplateResult {
    if (!summary) return html`<p class="small signal">${msg('Cannot be opened.')} ${problem}</p>`;
    return html`<p class="small soft">
      ${msg(html`${sessionFacts(summary)}<br />Changed ${dateText(summary.changedAt)}`)}
    </p>`;
  }

  private renderButtons({ deleted, summary }: StoredSession): TemplateResult {
    if (deleted) {
      // Where "Delete" was before, under a hand that presses twice, stands what does no harm.
      return html`${this.renderButton(msg('Remove for good'), 'remove')}
      ${this.renderButton(msg('Bring back'), 'restore')}`;
    }
    const open = this.here
      ? html`<span class="small soft">${msg('On the bench')}</span>`
      : this.renderButton(msg('Open'), 'open');
    return html`${summary ? open : nothing}
    ${summary && !this.here ? this.renderButton(msg('Compare'), 'compare') : nothing}
    ${summary ? this.renderButton(msg('Duplicate'), 'duplicate') : nothing}
    ${this.renderButton(msg('Delete'), 'delete')}`;
  }

  private renderButton(
    words: string,
    what: Exclude<SessionWish['what'], 'rename'>,
  ): TemplateResult {
    return html`<button
      class="ghost"
      data-wish=${what}
      aria-label="${words}: ${this.session?.name ?? ''}"
      ?disabled=${this.disabled}
      @click=${() => this.wish({ what })}
    >
      ${words}
    </button>`;
  }

  private wish(detail: SessionWish): void {
    this.dispatchEvent(new CustomEvent('ll-wish', { detail }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-session-row': SessionRow;
  }
  interface HTMLElementEventMap {
    'll-wish': CustomEvent<SessionWish>;
  }
}
