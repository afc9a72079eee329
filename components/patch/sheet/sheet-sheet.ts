import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import { parseSheet } from '../../../src/system/sheet/parse-sheet';
import type { ProcessorSheet } from '../../../src/system/sheet/processor-sheet';
import { isTrouble, type Trouble } from '../../../src/trouble';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/file-drop';
import { saveFile } from '../../probe/take/save-file';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { loadSample, sampleSheets } from './samples';
import { draftOf, drafts } from './sheet-draft';
import './sheet-editor';
import { sheetFacts } from './sheet-facts';
import { dropSheet, useSheet } from './use-sheet';

/** The processor: a sample, a file or one's own sheet. */
@customElement('ll-sheet-sheet')
export class SheetSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      .samples {
        display: grid;
        gap: var(--space-2);
        padding: 0;
        list-style: none;
      }

      .samples li,
      .ways {
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: var(--space-1) var(--space-3);
      }

      .refused {
        overflow-wrap: anywhere;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  /** Why what was brought last is no sheet; null when it was one. */
  @state() private refused: string | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { bench } = this;
    const { state } = this.follow;
    if (!bench || !state) return nothing;
    const busy = state.activity.kind !== 'idle';
    if (drafts.of(bench)) {
      return html`<section class="sheet" aria-label=${msg('Draft of a processor sheet')}>
        <ll-sheet-editor .bench=${bench} @ll-closed=${() => this.requestUpdate()}></ll-sheet-editor>
      </section>`;
    }
    return html`<div class="sheets halves">
      ${this.chosen(bench, state, busy)}
      <div class="column">
        <section class="sheet" aria-labelledby="samples">
          <h2 id="samples">${msg('Invented samples')}</h2>
          <p>
            ${msg('They describe no existing processor: to try the bench with, and to begin from.')}
          </p>
          <ul class="samples">
            ${sampleSheets.map(
              ({ file, name, what }) =>
                html`<li>
                  <button class="ghost" ?disabled=${busy} @click=${() => void this.sample(file)}>
                    ${name}
                  </button>
                  <span>${what}, <b>${msg('invented')}</b></span>
                </li>`,
            )}
          </ul>
        </section>
        <section class="sheet" aria-labelledby="file">
          <h2 id="file">${msg('From a file')}</h2>
          <ll-file-drop
            label=${msg('Choose a processor sheet')}
            hint=${msg('or drop it here: a JSON file')}
            name=${msg('Processor sheet')}
            accept=".json,application/json"
            ?disabled=${busy}
            @ll-file=${(event: CustomEvent<File>) => void this.bring(event.detail)}
          ></ll-file-drop>
          ${
            this.refused === null
              ? nothing
              : html`<p class="signal refused" role="alert">
                  ${msg(str`${this.refused} Nothing was changed.`)}
                </p>`
          }
        </section>
      </div>
    </div>`;
  }

  private chosen(bench: Bench, { document }: BenchState, busy: boolean) {
    const { sheet } = document;
    if (!sheet) {
      return html`<section class="sheet" aria-labelledby="chosen">
        <h2 id="chosen">${msg('No processor yet')}</h2>
        <p>
          ${msg('A processor sheet says what the processor can do: its outputs and what each can carry, which choices exclude each other, and the steps and ranges of its settings. Choose a sample, bring a file, or begin with a sample and edit it.')}
        </p>
      </section>`;
    }
    return html`<section class="sheet" aria-labelledby="chosen">
      <h2 id="chosen">${sheet.name}</h2>
      ${
        sheet.invented
          ? html`<p class="signal">
              ${msg('Invented: this sheet describes no existing processor.')}
            </p>`
          : nothing
      }
      ${sheetFacts(sheet)}
      <span class="ways">
        <button
          class="ghost"
          @click=${() => {
            drafts.keep(bench, draftOf(sheet));
            this.requestUpdate();
          }}
        >
          ${msg('Edit as a draft')}
        </button>
        <button class="ghost" @click=${() => saveSheet(sheet)}>${msg('Save as a file')}</button>
        <button class="ghost" ?disabled=${busy} @click=${() => dropSheet(bench)}>
          ${msg('Go on without it')}
        </button>
      </span>
    </section>`;
  }

  private async sample(file: string): Promise<void> {
    this.take(await loadSample(file));
  }

  private async bring(file: File): Promise<void> {
    this.take(parseSheet(await file.text()));
  }

  private take(sheet: ProcessorSheet | Trouble): void {
    this.refused = isTrouble(sheet) ? sheet.sentence : null;
    if (!isTrouble(sheet)) useSheet(this.bench, sheet);
  }
}

function saveSheet(sheet: ProcessorSheet): void {
  const name = sheet.name
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
  const text = `${JSON.stringify(sheet, null, 2)}\n`;
  saveFile(`${name || 'processor'}.json`, new Blob([text], { type: 'application/json' }));
}

declare global {
  interface HTMLElementTagNameMap {
    'll-sheet-sheet': SheetSheet;
  }
}
