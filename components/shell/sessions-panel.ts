import { msg, str } from '@lit/localize';
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Updates } from '../../src/offline/updates';
import type { Bench, BenchState } from '../../src/session/bench';
import type { StoredSession } from '../../src/session/shelf/stored-session';
import { summariseSession } from '../../src/session/shelf/summarise-session';
import { BenchController } from '../bench-controller';
import { buttonStyles } from '../controls/button-styles';
import '../controls/file-drop';
import '../controls/progress-bar';
import '../controls/trouble-banner';
import { proveSheetAddress } from '../prove/prove-sheets';
import { saveFile } from '../probe/take/save-file';
import { sharedStyles } from '../theme/shared-styles';
import './session-row';
import type { SessionRow, SessionWish } from './session-row';
import { sessionsStyles } from './sessions-styles';
import './version-line';

/** The sessions of this browser, to be opened, copied, renamed and deleted, and their files. */
@customElement('ll-sessions-panel')
export class SessionsPanel extends LitElement {
  static override styles = [sharedStyles, buttonStyles, sessionsStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) updates: Updates | null = null;
  @query('dialog') private readonly dialog!: HTMLDialogElement;
  /** Nothing is drawn while the panel is closed. */
  @state() private shown = false;
  private readonly follow = new BenchController(this);

  /** Shows the panel and reads the list anew. */
  async open(): Promise<void> {
    void this.bench?.sessions.look();
    this.shown = true;
    await this.updateComplete;
    if (!this.dialog.open) this.dialog.showModal();
  }

  close(): void {
    this.dialog.close();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    return html`<dialog aria-labelledby="title" @close=${() => (this.shown = false)}>
      ${state && this.shown ? this.renderContent(state) : nothing}
    </dialog>`;
  }

  private renderContent(state: BenchState): TemplateResult {
    const busy = state.activity.kind !== 'idle' || state.sessions.file !== null;
    return html`<div class="content">
      <div class="head">
        <h2 id="title">${msg('Sessions in this browser')}</h2>
        <button class="ghost" @click=${() => this.close()}>${msg('Close')}</button>
      </div>
      <ll-trouble
        class=${state.trouble === null ? 'quiet' : ''}
        .trouble=${state.trouble}
        @ll-dismiss=${() => this.bench?.dismissTrouble()}
      ></ll-trouble>
      ${this.renderHistory(state, busy)}
      <div class="actions">
        <button class="ghost new" ?disabled=${busy} @click=${() => void this.begin()}>
          ${msg('New session')}
        </button>
        <button class="ghost save" ?disabled=${busy} @click=${() => void this.save()}>
          ${msg('Save this session as a file')}
        </button>
      </div>
      ${renderProgress(state)}
      <ll-file-drop
        label=${msg('Open a session file')}
        hint=${msg('or drop it here. It becomes a session of its own, unless it is in the list already; those in the list stay as they are.')}
        name=${msg('Session file')}
        accept=".zip,application/zip"
        ?disabled=${busy}
        @ll-file=${(event: CustomEvent<File>) => void this.openFile(event)}
      ></ll-file-drop>
      ${this.renderLists(state, busy)}
      <ll-version .updates=${this.updates}></ll-version>
    </div>`;
  }

  private renderHistory({ history }: BenchState, busy: boolean): TemplateResult | typeof nothing {
    if (history.undo === null && history.redo === null) return nothing;
    const button = (way: 'undo' | 'redo', words: string): TemplateResult | typeof nothing =>
      history[way] === null
        ? nothing
        : html`<button class="ghost" ?disabled=${busy} @click=${() => this.bench?.[way]()}>
            ${words}: ${history[way]}
          </button>`;
    return html`<div class="actions">
      ${button('undo', msg('Undo'))} ${button('redo', msg('Redo'))}
    </div>`;
  }

  private renderLists(state: BenchState, busy: boolean): TemplateResult {
    const { stored } = state.sessions;
    if (stored === null) return html`<p class="soft" role="status">${msg('Reading the list.')}</p>`;
    const sessions = withOneInHand(stored, state);
    const deleted = sessions.filter((one) => one.deleted);
    return html`${this.renderList(
      sessions.filter((one) => !one.deleted),
      state,
      busy,
    )}
    ${
      deleted.length === 0
        ? nothing
        : html`<section aria-labelledby="deleted">
            <h3 id="deleted">${msg('Deleted, kept until this page is closed')}</h3>
            ${this.renderList(deleted, state, busy)}
          </section>`
    }`;
  }

  private renderList(
    sessions: readonly StoredSession[],
    { document }: BenchState,
    busy: boolean,
  ): TemplateResult {
    return html`<ul>
      ${repeat(
        sessions,
        ({ id }) => id,
        (session) =>
          html`<li>
            <ll-session-row
              data-session=${session.id}
              .session=${session}
              .here=${session.id === document.id}
              .disabled=${busy}
              @ll-wish=${(event: CustomEvent<SessionWish>) =>
                void this.grant(session.id, event.detail)}
            ></ll-session-row>
          </li>`,
      )}
    </ul>`;
  }

  private async grant(id: string, wish: SessionWish): Promise<void> {
    const sessions = this.bench?.sessions;
    if (!sessions) return;
    if (wish.what === 'rename') return sessions.rename(id, wish.name);
    if (wish.what === 'compare') return this.compare(id);
    await sessions[wish.what](id);
    if (wish.what === 'open') return this.closeWhenDone();
    await this.updateComplete;
    this.rowOf(id)?.focus();
  }

  /** Shows the session on the bench beside a stored one. */
  private async compare(id: string): Promise<void> {
    await this.bench?.sessions.compareWith(id);
    if (this.bench?.state.trouble !== null) return;
    this.close();
    location.hash = proveSheetAddress('visits');
  }

  /** The row may have moved to another list: what can be done with it now is in focus. */
  private rowOf(id: string): SessionRow | null {
    const rows = [...this.renderRoot.querySelectorAll('ll-session-row')];
    return rows.find((row) => row.session?.id === id) ?? null;
  }

  private async begin(): Promise<void> {
    await this.bench?.sessions.create();
    this.closeWhenDone();
  }

  private async openFile(event: CustomEvent<File>): Promise<void> {
    await this.bench?.sessions.openFile(event.detail);
    this.closeWhenDone();
  }

  private async save(): Promise<void> {
    const file = await this.bench?.sessions.saveFile();
    if (file) saveFile(file.name, file.blob);
  }

  /** A trouble is said here first. */
  private closeWhenDone(): void {
    if (this.bench?.state.trouble === null) this.close();
  }
}

/** The list with the session on the bench as it is now, also when it was never changed or saved. */
function withOneInHand(
  stored: readonly StoredSession[],
  { document }: BenchState,
): StoredSession[] {
  const { id, name, createdAt } = document;
  const listed = stored.find((one) => one.id === id);
  const changedAt = listed?.summary?.changedAt ?? createdAt;
  const summary = summariseSession(document, changedAt);
  const here = { id, name, order: listed?.order ?? 0, deleted: false, summary, problem: null };
  const others = stored.filter((one) => one.id !== id);
  return [here, ...others];
}

function renderProgress({ sessions: { file } }: BenchState): TemplateResult | typeof nothing {
  if (file === null) return nothing;
  return html`<div>
    <p class="small soft" role="status">${msg(str`${file.what} the file. Esc stops it.`)}</p>
    <ll-progress label=${msg(str`${file.what} the file`)} .value=${file.progress}></ll-progress>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sessions-panel': SessionsPanel;
  }
}
