import { msg } from '@lit/localize';
import { html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { LaterElement } from '../../later-element';
import { styleMap } from 'lit/directives/style-map.js';
import type { LedgerLine } from '../../../dsp/bass/bass-ledger';
import type { ChannelLabel, Layout } from '../../../src/system/channel';
import { dbText } from '../../../src/locale/number-text';
import { askToSelect } from '../../events';
import { groupColour } from '../../group-colour';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { alongBar, ledgerStretches } from './ledger-bar';
import { ledgerStyles } from './ledger-styles';
import { carrierWords, stretchText, wantsMending } from './ledger-words';

const ticks = [
  { hz: 20, wide: false },
  { hz: 30, wide: true },
  { hz: 40, wide: true },
  { hz: 60, wide: false },
  { hz: 80, wide: true },
  { hz: 120, wide: false },
  { hz: 200, wide: true },
  { hz: 300, wide: false },
];

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;

/** The bass ledger: a line for every channel of the programme, and where each frequency goes. */
@customElement('ll-bass-ledger')
export class BassLedger extends LaterElement {
  static override styles = [sharedStyles, ledgerStyles];

  @property({ attribute: false }) lines: readonly LedgerLine[] = [];
  /** Channels of which no roll-off is known. */
  @property({ attribute: false }) unknown: readonly ChannelLabel[] = [];
  @property({ attribute: false }) layout: Layout | null = null;
  /** Who plays the bass of others. */
  @property() carrier: 'subs' | 'fronts' = 'subs';
  /** Where the LFE channel ends. */
  @property({ type: Number }) lfeHz = 120;

  override render() {
    const { lines, unknown, layout, carrier } = this;
    if (!layout) return nothing;
    return html`<table>
        <caption class="unseen">
          ${msg('Where the bass of every channel goes, 20 to 300 Hz')}
        </caption>
        <thead>
          <tr>
            <th scope="col" class="name"><span class="unseen">${msg('Channel')}</span></th>
            <th scope="col">
              <span class="unseen">${msg('Who plays it')}</span>
              <div class="axis" aria-hidden="true">${ticks.map(tick)}</div>
            </th>
            <th scope="col" class="loss">${msg('Lost')}</th>
          </tr>
        </thead>
        <tbody>
          ${lines.map((line) => this.line(line, layout))}
          ${unknown.map(
            (channel) =>
              html`<tr>
                <th scope="row" class="name">${channel}</th>
                <td class="left soft small" colspan="2">${msg('no roll-off is known')}</td>
              </tr>`,
          )}
        </tbody>
      </table>
      <div class="key" aria-hidden="true">
        <span>${msg(html`<i class="own"></i>its own speaker`)}</span>
        <span><i class="carried ${carrier}"></i>${carrierWords(carrier)}</span>
        <span>${msg(html`<i class="nobody"></i>nobody`)}</span>
      </div>`;
  }

  private line(line: LedgerLine, layout: Layout) {
    const { name, lossDb } = line;
    const own = layout.channels.find(({ label }) => label === name) ?? null;
    const stretches = ledgerStretches(line, this.lfeHz);
    return html`<tr data-line=${name}>
      <th scope="row" class="name">
        ${
          own
            ? html`<button @click=${() => askToSelect(this, own.label)}>
                <ll-speaker-icon .channel=${own}></ll-speaker-icon>${name}
              </button>`
            : name
        }
      </th>
      <td>
        <span class="bar ${name === 'LFE' ? 'none' : ''}" aria-hidden="true"
          >${stretches.map(
            ({ who, lowHz, highHz }) =>
              html`<span
                class="${who} ${this.carrier}"
                style=${styleMap({
                  left: percent(alongBar(lowHz)),
                  width: percent(alongBar(highHz) - alongBar(lowHz)),
                  background: who === 'own' && own ? groupColour(own.group) : '',
                })}
              ></span>`,
          )}</span
        >
        <span class="unseen">${stretchText(stretches, this.carrier)}</span>
      </td>
      <td class="num loss ${wantsMending(line) ? 'signal' : ''}">${dbText(lossDb)}</td>
    </tr>`;
  }
}

function tick({ hz, wide }: (typeof ticks)[number]) {
  return html`<span class=${wide ? 'wide-only' : ''} style="left:${percent(alongBar(hz))}"
    >${hz}</span
  >`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-bass-ledger': BassLedger;
  }
}
