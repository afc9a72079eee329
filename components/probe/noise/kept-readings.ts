import { msg, str } from '@lit/localize';
import { localeInForce } from '../../../src/locale/locale-in-force';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { NoiseReading } from '../../../src/noise/noise-state';
import type { Bench, BenchState } from '../../../src/session/bench';
import { BenchController } from '../../bench-controller';
import { dbText, durationText, hzText } from '../../../src/locale/number-text';
import '../../charts/response-chart';
import type { ResponseTrace } from '../../charts/response-trace';
import { buttonStyles } from '../../controls/button-styles';
import { sharedStyles } from '../../theme/shared-styles';
import { positionsOf } from '../take/positions';
import { differenceSentence, noiseTraces } from './noise-traces';

interface Shown {
  readonly key: readonly unknown[];
  readonly traces: readonly ResponseTrace[];
  readonly difference: string | null;
}

/** Kept readings of noise and listening, newest first; the picked one is drawn against the sweep. */
@customElement('ll-kept-readings')
export class KeptReadings extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      td,
      th {
        white-space: nowrap;
        vertical-align: middle;
      }

      .plain {
        min-height: 2rem;
      }

      .pick .plain {
        font-weight: 700;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @state() private picked: string | null = null;
  private readonly follow = new BenchController(this);
  private shown: Shown | null = null;

  override render() {
    const now = this.follow.state;
    if (!now) return nothing;
    const kept = [...now.document.noiseReadings].reverse();
    if (kept.length === 0) return html`<p class="soft">${msg('None kept yet.')}</p>`;
    const reading = kept.find(({ id }) => id === this.picked) ?? kept[0];
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${msg('Kept readings')}>
        <table>
          <thead>
            <tr>
              <th scope="col">${msg('Speaker')}</th>
              <th scope="col" class="left">${msg('By')}</th>
              <th scope="col">${msg('Level')}</th>
              <th scope="col">${msg('−3 dB at')}</th>
              <th scope="col">${msg('Averaged')}</th>
              <th scope="col" class="left">${msg('Where')}</th>
              <th scope="col"><span class="unseen">${msg('Remove')}</span></th>
            </tr>
          </thead>
          <tbody>
            ${kept.map((one) => this.row(one, one === reading, now))}
          </tbody>
        </table>
      </div>
      ${reading ? this.drawing(reading, now) : nothing}`;
  }

  private row(one: NoiseReading, shown: boolean, now: BenchState) {
    const place = positionsOf(now.document).find(({ position }) => position.id === one.positionId);
    return html`<tr class=${shown ? 'pick' : ''}>
      <th scope="row">
        <button
          class="plain num"
          aria-pressed=${shown ? 'true' : 'false'}
          aria-label=${msg(str`Show ${one.channel}, ${one.kind}`)}
          @click=${() => (this.picked = one.id)}
        >
          ${one.channel}
        </button>
      </th>
      <td class="left">${one.kind}${one.simulated ? msg(', simulated') : ''}</td>
      <td class="num">${dbText(one.levelDb)}</td>
      <td class="num">${hzText(one.rolloff?.f3Hz.median)}</td>
      <td class="num">${durationText(one.seconds)}</td>
      <td class="left">${place?.position.name ?? msg('an earlier position')}</td>
      <td>
        <button class="plain" @click=${() => this.discard(one)}>
          ${msg(html`Remove<span class="unseen"> ${one.channel}, ${one.kind}</span>`)}
        </button>
      </td>
    </tr>`;
  }

  private drawing(reading: NoiseReading, now: BenchState) {
    const { traces, difference } = this.show(reading, now);
    const elsewhere = reading.positionId !== now.document.position.id;
    return html`${
      reading.kind === 'listening'
        ? html`<p class="soft">
            ${msg('Without arrival: the processor played, this computer listened.')}
          </p>`
        : nothing
    }
    ${difference ? html`<p>${difference}</p>` : nothing}
    ${
      difference && elsewhere
        ? html`<p class="signal">${msg('The sweep was taken at another position.')}</p>`
        : nothing
    }
    ${reading.notes.map((note) => html`<p class="small">${note}</p>`)}
    ${
      traces.length > 0
        ? html`<ll-response-chart range="full" .traces=${traces}></ll-response-chart>`
        : html`<p class="soft">${msg('This reading has a level only, no response.')}</p>`
    }`;
  }

  /** Drawn anew only when the reading or the sweep beside it has changed. */
  private show(reading: NoiseReading, now: BenchState): Shown {
    const key = [localeInForce(), reading, now.readings, now.layout];
    if (!this.shown || !key.every((value, index) => value === this.shown?.key[index])) {
      const traces = noiseTraces(reading, now);
      this.shown = { key, traces, difference: differenceSentence(reading, now) };
    }
    return this.shown;
  }

  private discard({ id }: NoiseReading): void {
    this.bench?.change(msg('Remove noise reading'), (document) => ({
      ...document,
      noiseReadings: document.noiseReadings.filter((one) => one.id !== id),
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-kept-readings': KeptReadings;
  }
}
