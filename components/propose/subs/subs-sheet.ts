import { msg, str } from '@lit/localize';
import { stateWord } from '../../../src/locale/state-words';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { sayValue } from '../../../src/proposal/settings-list';
import type { Bench } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import '../../charts/response-chart';
import { signedText } from '../../../src/locale/number-text';
import { traceOf, type ResponseTrace } from '../../charts/response-trace';
import { askToSelect } from '../../events';
import { groupColour } from '../../group-colour';
import { buttonStyles } from '../../controls/button-styles';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { Kept } from '../../kept';
import type { ProposeView } from '../propose-view';
import '../reasons/reason-list';
import './sub-alignment';
import './sub-filters';
import { polarityOf } from './subs-words';

/** The second sheet of Propose: distance, level and polarity of each sub, and their filters. */
@customElement('ll-subs-sheet')
export class SubsSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      td {
        vertical-align: middle;
      }

      .plain {
        text-decoration: none;
        white-space: nowrap;
        min-height: var(--target);
      }

      .why {
        display: grid;
        gap: var(--space-2);
      }

      @container (max-width: 30rem) {
        .gain,
        ll-speaker-icon {
          display: none;
        }

        td,
        th {
          padding-inline: 0.2rem;
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly kept = new Kept<ResponseTrace[]>();

  override render() {
    const { view, bench } = this;
    if (!view) return nothing;
    const { subs } = view.proposal;
    if (!subs) {
      return html`<section class="sheet" aria-label=${msg('Without a sub')}>
        <ll-reasons
          .reasons=${view.group.fullRange.reasons}
          .readings=${view.readings}
        ></ll-reasons>
      </section>`;
    }
    const traces = this.traces(view);
    return html`<div class="sheets">
      <div class="column">
        <section class="sheet" aria-labelledby="subs">
          <h2 id="subs">${msg('Each sub, as it is typed')}</h2>
          ${this.table(view)}
        </section>
        <section class="sheet" aria-labelledby="alignment">
          <h2 id="alignment">${msg('Set against the mains')}</h2>
          <ll-sub-alignment .bench=${bench} .view=${view}></ll-sub-alignment>
        </section>
        <section class="sheet" aria-labelledby="reach">
          <h2 id="reach">${msg('Response of the subs at the seat')}</h2>
          ${
            traces.length === 0
              ? html`<p class="soft">${msg('No response of a sub could be read.')}</p>`
              : html`<ll-response-chart .traces=${traces}></ll-response-chart>`
          }
        </section>
      </div>
      <section class="sheet" aria-labelledby="filters">
        <h2 id="filters">${msg('Level and filters')}</h2>
        <ll-sub-filters .bench=${bench} .view=${view}></ll-sub-filters>
      </section>
    </div>`;
  }

  private table({ proposal, layout, readings }: ProposeView) {
    const rows = proposal.subs?.subs ?? [];
    return html`<table>
        <thead>
          <tr>
            <th scope="col">${msg('Sub')}</th>
            <th scope="col">${msg('Distance')}</th>
            <th scope="col">${msg('Level')}</th>
            <th scope="col" class="gain">${msg('Beside the first, dB')}</th>
            <th scope="col" class="left">${msg('Polarity')}</th>
          </tr>
        </thead>
        <tbody>
          ${rows.map(({ channel, gainDb }) => {
            const found = proposal.channels.find((one) => one.channel === channel);
            const speaker = layout.channels.find(({ label }) => label === channel);
            const polarity = polarityOf(proposal, channel);
            return html`<tr class=${channel === this.selected ? 'pick' : ''} data-sub=${channel}>
              <th scope="row">
                <button class="plain" @click=${() => askToSelect(this, channel)}>
                  ${speaker ? html`<ll-speaker-icon .channel=${speaker}></ll-speaker-icon>` : nothing}
                  ${channel}
                </button>
              </th>
              <td class="num">
                ${found?.distance ? sayValue(found.distance) : msg('cannot tell')}
              </td>
              <td class="num">${found?.level ? sayValue(found.level) : msg('cannot tell')}</td>
              <td class="num gain">${signedText(gainDb, 1)}</td>
              <td class="left ${polarity === 'inverted' ? 'signal' : ''}">
                ${stateWord(polarity)}
              </td>
            </tr>`;
          })}
        </tbody>
      </table>
      <div class="why">
        ${rows.map(({ channel }) => {
          const found = proposal.channels.find((one) => one.channel === channel);
          const reasons = [...(found?.distanceReasons ?? []), ...(found?.levelReasons ?? [])];
          return reasons.length === 0
            ? nothing
            : html`<details>
                <summary>${msg(str`Why these for ${channel}`)}</summary>
                <ll-reasons .reasons=${reasons} .readings=${readings}></ll-reasons>
              </details>`;
        })}
      </div>`;
  }

  private traces({ readings, layout, workbench }: ProposeView): ResponseTrace[] {
    return this.kept.of([workbench, layout, this.selected], () => {
      const labels = layout.channels.flatMap(({ kind, label }) => (kind === 'sub' ? [label] : []));
      const first = (label: ChannelLabel) => Number(label === this.selected);
      return readings.channels
        .filter(({ channel }) => labels.includes(channel))
        .sort((a, b) => first(b.channel) - first(a.channel))
        .flatMap((one) => traceOf(one, groupColour('subs')) ?? []);
    });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-subs-sheet': SubsSheet;
  }
}
