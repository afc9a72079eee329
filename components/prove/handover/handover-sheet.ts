import { msg, str } from '@lit/localize';
import { inPlainLocale, localeInForce } from '../../../src/locale/locale-in-force';
import { LitElement, html, nothing } from 'lit';
import { customElement, property, state as kept } from 'lit/decorators.js';
import { gatherHandover } from '../../../src/handover/gather-handover';
import type { Handover } from '../../../src/handover/handover';
import { handoverCsv } from '../../../src/handover/handover-csv';
import { fileName } from '../../../src/inspect/file-name';
import type { Bench, BenchState } from '../../../src/session/bench';
import { mostNotes, withNotes } from '../../../src/session/notes';
import { pageVersion } from '../../page-version';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { PrintSheet } from '../../controls/print-sheet';
import { labelFont } from '../../plan/arrange-plan';
import { saveFile } from '../../probe/take/save-file';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { handoverPage } from './handover-page';
import { handoverPlan } from './handover-plan';
import { handoverSheetStyles } from './handover-sheet-styles';
import { handoverStyles } from './handover-styles';

const now = (): string => new Date().toISOString();

/** The second sheet of Prove: the page that stays with the system, and the tuner's notes on it. */
@customElement('ll-handover-sheet')
export class HandoverSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    handoverSheetStyles,
    handoverStyles,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  /** Notes as they stand in the field, while they are longer than a session keeps. */
  @kept() private tooLong: string | null = null;
  private readonly follow = new BenchController(this);
  private kept: { readonly key: readonly unknown[]; readonly handover: Handover } | null = null;

  constructor() {
    super();
    const draw = () => {
      const { state } = this.follow;
      return state && this.page(state, gatherHandover(state, now(), pageVersion()));
    };
    new PrintSheet(this, draw, [handoverStyles]);
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    return html`<div class="sheets">
      <section class="sheet paper" aria-label=${msg('The page as it prints')}>
        ${this.page(state, this.gathered(state))}
      </section>
      <section class="sheet" aria-label=${msg('Notes and files')}>
        <label for="notes">${msg('Notes on this system')}</label>
        <textarea
          id="notes"
          rows="8"
          aria-describedby="about-notes"
          aria-invalid=${this.tooLong !== null}
          .value=${this.tooLong ?? state.document.notes}
          @change=${this.write}
        ></textarea>
        ${
          this.tooLong === null
            ? html`<p id="about-notes" class="small soft">
                ${msg('Plain text, kept in the session and printed below the rest. A page holds some twenty lines of it.')}
              </p>`
            : html`<p id="about-notes" class="small signal" role="alert">
                ${msg(str`These notes have ${this.tooLong.length} letters and a session keeps the first ${mostNotes}: shorten them.`)}
              </p>`
        }
        <button class="go" @click=${() => window.print()}>${msg('Print the page')}</button>
        <button class="ghost" @click=${() => this.save('csv')}>${msg('Save as CSV')}</button>
        <button class="ghost" @click=${() => this.save('json')}>${msg('Save as JSON')}</button>
      </section>
    </div>`;
  }

  private page(state: BenchState, handover: Handover) {
    return handoverPage(handover, handoverPlan(state, labelFont(this)));
  }

  /** The same record as long as nothing on it has changed: the level moves many times a second. */
  private gathered(state: BenchState): Handover {
    const { document, layout, proposal, proof, readings } = state;
    const key = [localeInForce(), document, layout, proposal, proof, readings];
    if (!this.kept || !key.every((value, n) => value === this.kept?.key[n])) {
      this.kept = { key, handover: gatherHandover(state, now(), pageVersion()) };
    }
    return this.kept.handover;
  }

  private readonly write = (event: Event): void => {
    const { value } = event.target as HTMLTextAreaElement;
    this.tooLong = value.length > mostNotes ? value : null;
    this.bench?.change(msg('Write notes'), (document) => withNotes(document, value));
  };

  private save(kind: 'csv' | 'json'): void {
    const { state } = this.follow;
    if (!state) return;
    const handover = inPlainLocale(() => gatherHandover(state, now(), pageVersion()));
    const facts = {
      layout: handover.layout,
      speaker: null,
      position: handover.session,
      takenAt: handover.madeAt,
    };
    const text = kind === 'csv' ? handoverCsv(handover) : `${JSON.stringify(handover, null, 2)}\n`;
    const type = kind === 'csv' ? 'text/csv' : 'application/json';
    saveFile(fileName(facts, 'handover', kind), new Blob([text], { type }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-handover-sheet': HandoverSheet;
  }
}
