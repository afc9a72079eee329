import { dbText, hzText, numberText, signedText } from '../../../src/locale/number-text';
import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ChannelEqualiser } from '../../../src/proposal/equaliser';
import type { Bench } from '../../../src/session/bench';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/check-field';
import '../../controls/number-field';
import { askToSelect } from '../../events';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { changeChoices } from '../choices/change-choices';
import type { ProposeView } from '../propose-view';
import '../reasons/reason-list';

const usualBands = 3;
const rule = () =>
  msg(
    'Peaking sections of the W3C Audio EQ Cookbook. A peak that all seats share is cut before anything is lifted, and a dip that moves from seat to seat is left alone: lifting it would spoil another seat. Deviation is the rms difference from the smooth target below the frequency named, at each seat.',
  );

/** The last sheet of Propose: what a few parametric sections could do; off until it is wanted. */
@customElement('ll-equaliser-sheet')
export class EqualiserSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      .plain {
        text-decoration: none;
        min-height: var(--target);
      }

      td.left {
        text-align: left;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;

  private bands(count: number): void {
    const { view } = this;
    if (!view) return;
    const name = count === 0 ? msg('Switch equaliser advice off') : msg('Choose equaliser bands');
    changeChoices(this.bench, name, { ...view.choices, equaliserBands: count });
  }

  override render() {
    const { view } = this;
    if (!view) return nothing;
    const { equaliserBands } = view.choices;
    const on = equaliserBands > 0;
    const { equaliser } = view.proposal;
    return html`<div class="sheets">
      <section class="sheet wide" aria-label=${msg('Equaliser')}>
        <ll-check
          label=${msg('Advise on an equaliser')}
          hint=${msg('Distances, levels and crossovers come first: they cost nothing. An equaliser helps only where all seats agree.')}
          .checked=${on}
          @ll-check=${(event: CustomEvent<boolean>) => this.bands(event.detail ? usualBands : 0)}
        ></ll-check>
        ${
          on
            ? html`<ll-number
                  label=${msg('Bands a channel has')}
                  .value=${equaliserBands}
                  .min=${1}
                  .max=${20}
                  .decimals=${0}
                  @ll-number=${(event: CustomEvent<number>) => this.bands(Math.round(event.detail))}
                ></ll-number>
                ${
                  equaliser
                    ? this.table(equaliser.channels, view, equaliser.upToHz)
                    : html`<p class="soft">
                        ${
                          view.coming
                            ? msg('Being worked out.')
                            : msg('No bass was captured, so nothing can be advised.')
                        }
                      </p>`
                }`
            : nothing
        }
      </section>
    </div>`;
  }

  private table(channels: readonly ChannelEqualiser[], view: ProposeView, upToHz: number) {
    return html`<p>${msg(str`Below ${hzText(upToHz)}; above it is left alone.`)}</p>
      ${channels.map(
        (one) =>
          html`<div data-equaliser=${one.channel}>
            <h3>
              <button class="plain" @click=${() => askToSelect(this, one.channel)}>
                ${one.channel}
              </button>
            </h3>
            ${
              one.bands.length === 0
                ? nothing
                : html`<table>
                    <caption class="unseen">
                      ${msg(str`Bands for ${one.channel}`)}
                    </caption>
                    <thead>
                      <tr>
                        <th scope="col">${msg('Frequency')}</th>
                        <th scope="col">${msg('Gain, dB')}</th>
                        <th scope="col">Q</th>
                      </tr>
                    </thead>
                    <tbody>
                      ${one.bands.map(
                        ({ hz, gainDb, q }) =>
                          html`<tr>
                            <th scope="row" class="num">${hzText(hz)}</th>
                            <td class="num">${signedText(gainDb, 1)}</td>
                            <td class="num">${numberText(q, 2)}</td>
                          </tr>`,
                      )}
                    </tbody>
                  </table>`
            }
            <p class="small num">${seatsText(one, view.proposal.seats)}</p>
            <ll-reasons .reasons=${one.reasons} .readings=${view.readings}></ll-reasons>
          </div>`,
      )}
      <p class="soft small">${rule()}</p>`;
  }
}

/** Deviation at every seat, before and after. */
function seatsText({ beforeDb, afterDb }: ChannelEqualiser, seats: readonly string[]): string {
  return beforeDb
    .map((before, n) => {
      const name = seats[n] ?? msg(str`Seat ${n + 1}`);
      return `${name} ${numberText(before, 1)} → ${dbText(afterDb[n])}`;
    })
    .join(' · ');
}

declare global {
  interface HTMLElementTagNameMap {
    'll-equaliser-sheet': EqualiserSheet;
  }
}
