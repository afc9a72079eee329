import { msg, str } from '@lit/localize';
import { stateWord } from '../../../src/locale/state-words';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import { nothingInForce, type DeclaredSettings } from '../../../src/system/declared-settings';
import { listInWords } from '../../../src/system/list-in-words';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/choice';
import { RevealController } from '../../controls/reveal-controller';
import '../../plan/speaker-icon';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { patchSheetAddress } from '../patch-sheets';
import { changeInForce, withEntry } from './change-in-force';
import './crossovers-in-force';
import './in-force-takes';
import { typedRanges, type TypedRanges } from './in-force-units';
import './typed-number';

const equaliserStates = ['not known', 'off', 'on'] as const;

/** What the processor already applies while it is measured, typed once. */
@customElement('ll-in-force-sheet')
export class InForceSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    buttonStyles,
    css`
      td {
        vertical-align: top;
        text-align: left;
      }

      tbody th {
        line-height: var(--target);
        white-space: nowrap;
      }

      thead th {
        text-align: left;
      }

      .speaker {
        display: inline-flex;
        align-items: center;
        gap: var(--space-2);
        font-weight: 700;
      }

      ll-typed-number {
        display: block;
        max-width: 11rem;
      }

      .clear {
        justify-self: start;
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  constructor() {
    super();
    new RevealController(this, patchSheetAddress('in-force'));
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const { inForce } = state.document;
    const ranges = typedRanges(state.document);
    const busy = state.activity.kind !== 'idle';
    return html`<div class="sheets">
      <section class="sheet" aria-labelledby="channels">
        <h2 id="channels">${msg('Distances and trims in the processor')}</h2>
        <table>
          <thead>
            <tr>
              <th scope="col">${msg('Channel')}</th>
              <th scope="col">${msg('Distance')}</th>
              <th scope="col">${msg('Trim')}</th>
            </tr>
          </thead>
          <tbody>
            ${state.layout.channels.map((channel) => this.row(state, channel, ranges, busy))}
          </tbody>
        </table>
        ${this.lacking(state)}
      </section>
      <div class="column">
        <section class="sheet" aria-labelledby="crossovers">
          <h2 id="crossovers">${msg('Crossovers in the processor')}</h2>
          <ll-crossovers-in-force .bench=${this.bench}></ll-crossovers-in-force>
        </section>
        <section class="sheet" aria-label=${msg('Equaliser')} data-place="equaliser">
          <ll-choice
            label=${msg('Equaliser of the processor')}
            .options=${equaliserStates.map((value) => ({ value, label: stateWord(value) }))}
            .value=${inForce.equaliser}
            ?disabled=${busy}
            @ll-pick=${(event: CustomEvent<string>) => this.setEqualiser(event.detail)}
          ></ll-choice>
          ${
            inForce.equaliser === 'on'
              ? html`<p class="signal">
                  ${msg('It bends levels, responses and roll-offs, and cannot be taken out; arrivals and polarity hold. Switch it off while you measure, and dynamics, night mode and upmixing too.')}
                </p>`
              : html`<p>
                  ${msg('Dynamics, night mode and upmixing are off while the system is read and proved.')}
                </p>`
          }
        </section>
        <section class="sheet" aria-labelledby="why">
          <h2 id="why">${msg('What this is for')}</h2>
          <p>
            ${msg('A processor that was set before shifts arrivals by its distances and levels by its trims, and its crossovers hide where a speaker rolls off. What is declared here is taken out of the readings, so that nothing has to be reset first. An empty field says that nothing was typed there.')}
          </p>
          <ll-in-force-takes .bench=${this.bench}></ll-in-force-takes>
          <button
            class="ghost clear"
            ?disabled=${busy}
            @click=${() =>
              changeInForce(this.bench, msg('Forget what is in force'), () => nothingInForce)}
          >
            ${msg('Forget all of it')}
          </button>
        </section>
      </div>
    </div>`;
  }

  /** Distances count only beside one another. */
  private lacking({ document, layout }: BenchState) {
    const { distanceMetres } = document.inForce;
    const labels = layout.channels.map(({ label }) => label);
    const bare = labels.filter((label) => distanceMetres[label] === undefined);
    if (bare.length === 0 || bare.length === labels.length) return nothing;
    return html`<p class="signal">
      ${msg(str`${listInWords(bare)} ${bare.length === 1 ? msg('has') : msg('have')} no distance yet. The processor delays each channel beside the farthest one, so type what it shows for every channel, the factory’s value too.`)}
    </p>`;
  }

  private row({ document }: BenchState, channel: Channel, ranges: TypedRanges, busy: boolean) {
    const { label } = channel;
    const { inForce } = document;
    const { unit, metresPerUnit, distance, trimDb } = ranges;
    const metres = inForce.distanceMetres[label];
    return html`<tr class=${label === this.selected ? 'pick' : ''}>
      <th scope="row">
        <span class="speaker">
          <ll-speaker-icon .channel=${channel}></ll-speaker-icon>${label}
        </span>
      </th>
      <td>
        <ll-typed-number
          label=${msg(str`Distance of ${label}`)}
          unit=${unit}
          .min=${distance[0]}
          .max=${distance[1]}
          .value=${metres === undefined ? null : metres / metresPerUnit}
          ?disabled=${busy}
          @ll-maybe=${({ detail }: CustomEvent<number | null>) =>
            this.set('distanceMetres', label, detail === null ? null : detail * metresPerUnit)}
        ></ll-typed-number>
      </td>
      <td>
        <ll-typed-number
          label=${msg(str`Trim of ${label}`)}
          unit="dB"
          .min=${trimDb[0]}
          .max=${trimDb[1]}
          .value=${inForce.trimDb[label] ?? null}
          ?disabled=${busy}
          @ll-maybe=${({ detail }: CustomEvent<number | null>) => this.set('trimDb', label, detail)}
        ></ll-typed-number>
      </td>
    </tr>`;
  }

  private set(field: 'distanceMetres' | 'trimDb', label: ChannelLabel, value: number | null): void {
    const what = field === 'trimDb' ? 'trim' : 'distance';
    changeInForce(this.bench, msg(str`Declare the ${what} of ${label}`), (inForce) => ({
      ...inForce,
      [field]: withEntry(inForce[field], label, value ?? undefined),
    }));
  }

  private setEqualiser(picked: string): void {
    const equaliser: DeclaredSettings['equaliser'] | undefined = equaliserStates.find(
      (one) => one === picked,
    );
    if (!equaliser) return;
    changeInForce(this.bench, msg('Declare the equaliser'), (inForce) => ({
      ...inForce,
      equaliser,
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-in-force-sheet': InForceSheet;
  }
}
