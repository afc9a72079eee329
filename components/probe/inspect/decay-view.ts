import { localMarks } from '../../../src/locale/decimal-mark';
import { hzText, intervalText, numberText, withUnit } from '../../../src/locale/number-text';
import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { DecayTime } from '../../../dsp/decay/decay-time';
import type { DecayAnswer, Inspector } from '../../../src/inspect/inspection';
import type { Bench, BenchState } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import '../../charts/curve/curve-chart';
import { sharedStyles } from '../../theme/shared-styles';
import { Asked } from './asked';
import { decayAxes, decayTraces } from './decay-curves';
import type { ShownSource } from './inspect-sources';

/** How long the room rings after one speaker, octave by octave, and where its modes run together. */
@customElement('ll-decay-view')
export class DecayView extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        grid-template-columns: minmax(0, 1fr);
        gap: var(--space-4);
      }

      td small {
        display: block;
        color: var(--soft);
        white-space: nowrap;
      }

      summary {
        cursor: pointer;
        font-weight: 700;
        min-height: var(--target);
        align-content: center;
      }

      ul {
        display: grid;
        gap: var(--space-1);
        padding-left: 1.1rem;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) inspector: Inspector | null = null;
  @property({ attribute: false }) source: ShownSource | null = null;
  private readonly follow = new BenchController(this);
  private readonly asked = new Asked(this);

  override render() {
    const { source } = this;
    const { state } = this.follow;
    if (!state) return nothing;
    if (!source) return html`<p>${msg('This speaker was not read here.')}</p>`;
    const { takeId, channel } = source;
    const answer = this.asked.to({
      kind: 'decay',
      source: { takeId, channel },
      volume: roomVolume(state),
    });
    if (this.asked.refusal !== null) {
      return html`<p class="signal" role="alert">${this.asked.refusal}</p>`;
    }
    if (!answer) return html`<p class="soft" role="status">${msg('Being computed …')}</p>`;
    const traces = decayTraces(answer);
    return html`<ll-curve-chart
        label=${msg(str`Decay after ${source.name}`)}
        .traces=${traces}
        .axes=${decayAxes(traces)}
      ></ll-curve-chart>
      ${table(answer)} ${this.middle(answer)} ${reasons(answer)}`;
  }

  private middle({ mid, schroeder }: DecayAnswer) {
    const { seconds, interval } = mid.t20;
    return html`<p>
      ${
        seconds === null
          ? msg(str`The middle octaves give no time: ${localMarks(mid.t20.sentence ?? '')}`)
          : msg(
              str`In the middle, 500 Hz and 1 kHz together, 60 dB are lost in ${withUnit(numberText(seconds, 2), 's')} (T20, ${intervalText(interval, 2)}).`,
            )
      }
      ${
        schroeder.hz === null
          ? localMarks(schroeder.sentence ?? '')
          : msg(
              str`Below ${hzText(schroeder.hz)} (${intervalText(schroeder.interval)}) the room's modes stand apart, above it they run together.`,
            )
      }
    </p>`;
  }
}

function table({ bands }: DecayAnswer) {
  return html`<div
    class="scroll"
    tabindex="0"
    role="region"
    aria-label=${msg('Decay times by octave')}
  >
    <table>
      <thead>
        <tr>
          <th scope="col">${msg('Octave')}</th>
          <th scope="col">EDT, s</th>
          <th scope="col">T20, s</th>
          <th scope="col">T30, s</th>
          <th scope="col">${msg('Above the noise, dB')}</th>
        </tr>
      </thead>
      <tbody>
        ${bands.map(
          ({ midHz, name, edt, t20, t30, rangeDb }) =>
            html`<tr>
              <th scope="row" title=${hzText(midHz)}>${localMarks(name)}</th>
              ${[edt, t20, t30].map(cell)}
              <td class="num">${numberText(rangeDb)}</td>
            </tr>`,
        )}
      </tbody>
    </table>
  </div>`;
}

function cell({ seconds, interval, trusted, sentence }: DecayTime) {
  if (seconds === null) return html`<td title=${localMarks(sentence ?? '')}>–</td>`;
  return html`<td class="num" title=${localMarks(sentence ?? '')}>
    ${numberText(seconds, 2)}${trusted ? '' : ' ?'} <small>${intervalText(interval, 2)}</small>
  </td>`;
}

/** Every reason for a missing or doubted number once, with the octaves it holds for. */
function reasons({ bands }: DecayAnswer) {
  const by = new Map<string, string[]>();
  for (const { name, edt, t20, t30 } of bands) {
    for (const { sentence } of [edt, t20, t30]) {
      if (sentence === null) continue;
      const octaves = by.get(sentence) ?? [];
      if (!octaves.includes(name)) by.set(sentence, [...octaves, name]);
    }
  }
  if (by.size === 0) return nothing;
  return html`<details>
    <summary>${msg('Left out or doubted (?), and why')}</summary>
    <ul>
      ${[...by].map(([sentence, octaves]) => html`<li>${localMarks(octaves.join('; '))}: ${localMarks(sentence)}</li>`)}
    </ul>
  </details>`;
}

/** Volume of the room on the plan, m³; null when its size was not declared. */
function roomVolume({ document }: BenchState): number | null {
  const { room } = document.system;
  if (!room) return null;
  const { lengthMetres, widthMetres, heightMetres } = room;
  return lengthMetres * widthMetres * heightMetres;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-decay-view': DecayView;
  }
}
