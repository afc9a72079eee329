import { msg } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import { selectStyles } from '../../controls/select-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { flagField, textField, type DraftPen } from './draft-pen';
import { outputSection } from './output-section';
import { ruleSections } from './rule-sections';
import { settingSections } from './setting-sections';
import { checkDraft, drafts } from './sheet-draft';
import { sheetEditorStyles } from './sheet-editor-styles';
import { useSheet } from './use-sheet';

/** Every field of a sheet as a draft: the session has it only once it is sound and asked for. */
@customElement('ll-sheet-editor')
export class SheetEditor extends LitElement {
  static override styles = [sharedStyles, buttonStyles, selectStyles, sheetEditorStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { bench } = this;
    const { state } = this.follow;
    const draft = bench && drafts.of(bench);
    if (!bench || !state || !draft) return nothing;
    const checked = checkDraft(draft);
    const finding = 'sentence' in checked ? checked : null;
    const pen: DraftPen = {
      draft,
      finding,
      change: (next) => {
        drafts.keep(bench, next);
        this.requestUpdate();
      },
    };
    const busy = state.activity.kind !== 'idle';
    return html`<section class="part" aria-label=${msg('Name')}>
        ${textField(pen, ['name'], { label: msg('Name of the processor') })}
        ${flagField(pen, ['invented'], {
          label: msg('Invented'),
          hint: msg('It describes no existing processor; every screen and page says so.'),
        })}
      </section>
      ${outputSection(pen)} ${ruleSections(pen)} ${settingSections(pen)}
      <div class="foot ${finding ? 'bad' : ''}">
        <p role="status">
          ${finding ? finding.sentence : msg('This sheet is sound. The session has it once you use it.')}
        </p>
        <span class="ways">
          <button
            class="go"
            ?disabled=${busy || finding !== null}
            @click=${() => {
              if ('sentence' in checked) return;
              useSheet(bench, checked);
              this.close(bench);
            }}
          >
            ${msg('Use this sheet')}
          </button>
          <button class="ghost" @click=${() => this.close(bench)}>
            ${msg('Discard the draft')}
          </button>
        </span>
      </div>`;
  }

  private close(bench: Bench): void {
    drafts.keep(bench, null);
    this.dispatchEvent(new CustomEvent('ll-closed'));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sheet-editor': SheetEditor;
  }
}
