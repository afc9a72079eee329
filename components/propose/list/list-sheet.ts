import { msg, str } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shownText, tickLine, type SettingsLine } from '../../../src/proposal/settings-list';
import type { Bench } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import '../../charts/copy-button';
import { buttonStyles } from '../../controls/button-styles';
import { RevealController } from '../../controls/reveal-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { proposeSheetAddress } from '../propose-sheets';
import type { ProposeView } from '../propose-view';
import '../settings-table';
import { listStyles } from './list-styles';
import { lineName, listCopy, listOf, nextLine, sectionNames } from './list-words';

const sections = ['crossovers', 'distances', 'levels', 'subs'] as const;

/** Everything to type, in the processor's order and units, ticked off as it is typed. */
@customElement('ll-list-sheet')
export class ListSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles, buttonStyles, listStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  constructor() {
    super();
    new RevealController(this, proposeSheetAddress('list'));
  }

  private tick(line: SettingsLine, ticked: boolean): void {
    this.bench?.change(
      ticked ? msg('Tick a setting as typed') : msg('Untick a setting'),
      (document) => ({
        ...document,
        typed: tickLine(document.typed, line, ticked),
      }),
    );
  }

  override render() {
    const { view } = this;
    const { state } = this.follow;
    if (!view || !state) return nothing;
    const lines = listOf(view, state.document);
    const known = lines.filter(({ text }) => text !== null);
    const ticked = known.filter((line) => line.ticked).length;
    const share = known.length === 0 ? 0 : (100 * ticked) / known.length;
    const { readings } = view;
    return html`<div class="sheets">
      <section class="sheet wide" aria-labelledby="list">
        <div class="bar">
          <h2 id="list">${heading(state.document.sheet?.name, readings.simulated)}</h2>
          <ll-copy-button label=${msg('Copy the list')} .text=${listCopy(lines, view.layout)}>
          </ll-copy-button>
        </div>
        ${
          view.coming
            ? html`<p class="signal" role="status">
                ${msg('The subs are still being worked out: type theirs last.')}
              </p>`
            : nothing
        }
        <div
          class="progress"
          role="progressbar"
          aria-label=${msg('Settings typed')}
          aria-valuemin="0"
          aria-valuemax=${known.length}
          aria-valuenow=${ticked}
        >
          <span style="width:${share.toFixed(1)}%"></span>
        </div>
        <div class="parts">${sections.map((section) => this.partOf(section, lines, view))}</div>
        <div class="bar">
          <p class="soft small">
            ${msg('Enter ticks a line and goes to the next. Only differences between distances matter to a processor: a common error changes nothing.')}
          </p>
          ${
            ticked > 0
              ? html`<button class="ghost" @click=${() => this.startAgain()}>
                  ${msg('Untick all')}
                </button>`
              : nothing
          }
        </div>
      </section>
      <section class="sheet wide" aria-labelledby="settings">
        <h2 id="settings">${msg('Why these numbers')}</h2>
        <ll-settings-table .view=${view} .selected=${this.selected}></ll-settings-table>
      </section>
    </div>`;
  }

  private partOf(
    section: SettingsLine['section'],
    all: readonly SettingsLine[],
    view: ProposeView,
  ) {
    const lines = all.filter((line) => line.section === section);
    if (lines.length === 0) return nothing;
    const next = nextLine(all);
    return html`<section aria-labelledby="part-${section}">
      <h3 id="part-${section}">${sectionNames[section]}</h3>
      <ol>
        ${lines.map((line) => html`<li>${this.line(line, line === next, view)}</li>`)}
      </ol>
    </section>`;
  }

  private line(line: SettingsLine, next: boolean, { layout }: ProposeView) {
    const { id, text, ticked, before, channel, name } = line;
    return html`<label
      class="${ticked ? 'ticked' : ''} ${next ? 'next' : ''}"
      data-line=${id}
      data-place=${id}
    >
      <input
        type="checkbox"
        .checked=${ticked}
        ?disabled=${text === null}
        @change=${(event: Event) => this.tick(line, (event.target as HTMLInputElement).checked)}
        @keydown=${(event: KeyboardEvent) => this.onward(event, line)}
      />
      <span class="name"
        >${lineName(line, layout)}${
          channel !== null && !name.includes(channel) ? html`<small>${channel}</small>` : nothing
        }</span
      >
      ${
        text === null
          ? html`<span class="value unknown">${msg('cannot tell')}</span>`
          : html`<span class="value"
              >${shownText(text)}${before === null ? nothing : html`<small>${msg(str`typed before: ${shownText(before)}`)}</small>`}</span
            >`
      }
    </label>`;
  }

  /** Enter ticks a line and moves on to the next that is not ticked. */
  private onward(event: KeyboardEvent, line: SettingsLine): void {
    if (event.key !== 'Enter') return;
    event.preventDefault();
    if (!line.ticked) this.tick(line, true);
    void this.updateComplete.then(() => {
      this.renderRoot.querySelector<HTMLInputElement>('.next input')?.focus();
    });
  }

  private startAgain(): void {
    this.bench?.change(msg('Untick all settings'), (document) => ({ ...document, typed: {} }));
  }
}

function heading(sheet: string | undefined, simulated: boolean): string {
  const where = sheet ?? msg('the processor');
  return msg(str`Type these into ${where}${simulated ? msg(' (simulated)') : ''}`);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-list-sheet': ListSheet;
  }
}
