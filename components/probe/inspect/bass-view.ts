import { localMarks } from '../../../src/locale/decimal-mark';
import { msg, str } from '@lit/localize';
import { LitElement, css, html } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { BassAnswer, Inspector } from '../../../src/inspect/inspection';
import { hzText, intervalText, numberText } from '../../../src/locale/number-text';
import '../../charts/picture/level-picture';
import type { LevelPictureData } from '../../charts/picture/level-picture-data';
import { sharedStyles } from '../../theme/shared-styles';
import { Asked } from './asked';
import type { ShownSource } from './inspect-sources';

/** How the bass of one speaker fades at the microphone, frequency by frequency. */
@customElement('ll-bass-view')
export class BassView extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4);
      }
    `,
  ];

  @property({ attribute: false }) inspector: Inspector | null = null;
  @property({ attribute: false }) source: ShownSource | null = null;
  private readonly asked = new Asked(this);
  private kept: { readonly of: BassAnswer; readonly data: LevelPictureData } | null = null;

  override render() {
    const { source } = this;
    if (!source) return html`<p>${msg('This speaker was not read here.')}</p>`;
    const { takeId, channel } = source;
    const answer = this.asked.to({ kind: 'bass', source: { takeId, channel } });
    if (this.asked.refusal !== null) {
      return html`<p class="signal" role="alert">${this.asked.refusal}</p>`;
    }
    if (!answer) return html`<p class="soft" role="status">${msg('Being computed …')}</p>`;
    if (this.kept?.of !== answer) {
      this.kept = { of: answer, data: { ...answer.picture, lowestDb: -42 } };
    }
    return html`<ll-level-picture
        label=${msg(str`How the bass of ${source.name} fades: time upwards, in milliseconds after the arrival`)}
        .data=${this.kept.data}
      ></ll-level-picture>
      <p class="soft small">
        ${msg('A tall dark column is a mode that rings on. Longer than its neighbours, it is heard as one note booming; another place for seat or sub changes it, an equaliser only turns it down.')}
      </p>
      ${modes(answer)}`;
  }
}

function modes({ modes }: BassAnswer) {
  if (modes.length === 0) return html`<p>${msg('No mode stands out.')}</p>`;
  return html`<div class="scroll" tabindex="0" role="region" aria-label=${msg('Modes that ring')}>
    <table>
      <thead>
        <tr>
          <th scope="col">${msg('Rings at')}</th>
          <th scope="col">${msg('Loses 60 dB in, s')}</th>
          <th scope="col" class="left">${msg('To know')}</th>
        </tr>
      </thead>
      <tbody>
        ${modes.map(
          ({ hz, seconds, interval, sentence }) =>
            html`<tr>
              <th scope="row" class="num">${hzText(hz)}</th>
              <td class="num">
                ${seconds === null ? '–' : `${numberText(seconds, 2)} (${intervalText(interval, 2)})`}
              </td>
              <td class="left">${localMarks(sentence ?? '')}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-bass-view': BassView;
  }
}
