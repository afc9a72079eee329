import { msg } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { StoredSession } from '../../../src/session/shelf/stored-session';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/file-drop';
import { selectStyles } from '../../controls/select-styles';
import { dateText } from '../../../src/locale/date-text';
import { sharedStyles } from '../../theme/shared-styles';
import { comparedVisits } from './compared';

/** Which earlier session is compared with: one of those stored here, or that of a file. */
@customElement('ll-visit-picker')
export class VisitPicker extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-3);
      }

      .ghost {
        justify-self: start;
      }

      p,
      dd {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  protected override firstUpdated(): void {
    if (this.follow.state?.sessions.stored === null) void this.bench?.sessions.look();
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const busy = state.activity.kind !== 'idle';
    return html`<h2>${msg('The earlier visit')}</h2>
      ${this.list(state, busy)} ${named(state)}
      ${
        state.sessions.earlier === null
          ? nothing
          : html`<button
              class="ghost"
              ?disabled=${busy}
              @click=${() => void this.bench?.sessions.compareWith(null)}
            >
              ${msg('Compare no more')}
            </button>`
      }
      <ll-file-drop
        label=${msg('Open an earlier session’s file')}
        hint=${msg('or drop it here. It is read to compare with, and kept nowhere; your sessions stay as they are.')}
        name=${msg('File of an earlier session')}
        accept=".zip,application/zip"
        ?disabled=${busy}
        @ll-file=${(event: CustomEvent<File>) =>
          void this.bench?.sessions.compareWithFile(event.detail)}
      ></ll-file-drop>`;
  }

  private list(state: BenchState, busy: boolean) {
    const { stored, earlier } = state.sessions;
    if (stored === null) return html`<p class="soft" role="status">${msg('Reading the list.')}</p>`;
    const others = stored.filter(
      ({ id, deleted, summary }) => !deleted && summary !== null && id !== state.document.id,
    );
    if (others.length === 0) {
      return html`<p>
        ${msg('No other session is in this browser. Open the file that was saved at the earlier visit, or keep this session: when you come again, begin a new one and compare it with this.')}
      </p>`;
    }
    const isListed = others.some(({ id }) => id === earlier?.id);
    return html`<label class="select">
      <span>${msg('Session in this browser')}</span>
      <select ?disabled=${busy} @change=${this.choose}>
        <option value="" .selected=${!isListed}>${msg('Choose one')}</option>
        ${others.map(
          (one) =>
            html`<option value=${one.id} .selected=${one.id === earlier?.id}>
              ${optionText(one)}
            </option>`,
        )}
      </select>
    </label>`;
  }

  private readonly choose = (event: Event): void => {
    const { value } = event.currentTarget as HTMLSelectElement;
    void this.bench?.sessions.compareWith(value === '' ? null : value);
  };
}

function optionText({ name, summary }: StoredSession): string {
  return summary ? `${name}, ${summary.layout}, ${dateText(summary.changedAt)}` : name;
}

/** What the two visits are called and when they were taken. */
function named(state: BenchState) {
  const comparison = comparedVisits(state)?.comparison;
  if (!comparison) return nothing;
  const { now, before } = comparison;
  const taken = (at: string | null): string => (at === null ? msg('no takes') : dateText(at));
  return html`<dl class="facts small">
    <dt>${msg('Then')}</dt>
    <dd>${before.session}, ${taken(before.takenAt)}</dd>
    <dt>${msg('Now')}</dt>
    <dd>${now.session}, ${taken(now.takenAt)}</dd>
  </dl>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-visit-picker': VisitPicker;
  }
}
