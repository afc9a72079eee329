import { speedText } from '../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { speedOfSound } from '../../dsp/level/speed-of-sound';
import type { Bench } from '../../src/session/bench';
import type { SessionDocument } from '../../src/session/document';
import { referenceChannel } from '../../src/system/layout';
import { BenchController } from '../bench-controller';
import '../controls/number-field';
import { sharedStyles } from '../theme/shared-styles';

/** What turns arrival times into distances: temperature and one tape distance. */
@customElement('ll-conditions')
export class Conditions extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-4);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { temperatureCelsius, referenceDistanceMetres } = state.document.conditions;
    const speed = speedText(speedOfSound(temperatureCelsius), 1);
    const reference = referenceChannel(state.layout);
    const busy = state.activity.kind !== 'idle';
    return html`<ll-number
        label=${msg('Temperature in the room')}
        measure="temperature"
        min="-10"
        max="50"
        decimals="1"
        .value=${temperatureCelsius}
        ?disabled=${busy}
        hint=${
          state.document.takes.length === 0
            ? msg(str`Sound travels ${speed} at that temperature.`)
            : msg(
                str`Sound travels ${speed} at that temperature. It holds for every take of this session: the distances follow it.`,
              )
        }
        @ll-number=${(event: CustomEvent<number>) =>
          this.set(msg('Set temperature'), { temperatureCelsius: event.detail })}
      ></ll-number>
      <ll-number
        label=${msg(str`Tape distance, ${reference} to the microphone`)}
        measure="length"
        min="0.2"
        max="30"
        decimals="2"
        .value=${referenceDistanceMetres}
        ?disabled=${busy}
        hint=${msg('The other distances are measured from this one. Only differences matter to the processor, so being a little off here changes nothing you hear.')}
        @ll-number=${(event: CustomEvent<number>) =>
          this.set(msg('Set reference distance'), { referenceDistanceMetres: event.detail })}
      ></ll-number>`;
  }

  private set(name: string, conditions: Partial<SessionDocument['conditions']>): void {
    this.bench?.change(name, (document) => ({
      ...document,
      conditions: { ...document.conditions, ...conditions },
    }));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'll-conditions': Conditions;
  }
}
