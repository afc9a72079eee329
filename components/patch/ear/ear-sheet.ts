import { msg, str } from '@lit/localize';
import { LitElement, html, nothing, type PropertyValues } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { Channel, ChannelLabel } from '../../../src/system/channel';
import { concludeEarCheck } from '../../../src/wirecheck/ear-check';
import { BenchController } from '../../bench-controller';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/number-field';
import { askToSelect } from '../../events';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { isLoud } from '../../probe/level/exposure-words';
import { runningElsewhere } from '../../probe/running-elsewhere';
import '../../probe/take/waiting-card';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { checkStyles } from '../check-styles';
import { outputNamer, wiringOrder } from '../wiring/wiring-now';
import { earButtons } from './ear-buttons';
import { EarCheck } from './ear-check';
import './ear-conclusion';
import { earAction, earDigit, type EarAction } from './ear-keys';
import './ear-list';
import { earSheetStyles } from './ear-sheet-styles';
import { numbersFrom } from './ear-words';

/** Noise on one channel at a time in wiring order, and what the tuner hears of it. */
@customElement('ll-ear-sheet')
export class EarSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles, buttonStyles, checkStyles, earSheetStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  /** Digits of a speaker's number typed so far. */
  @state() private typed = '';
  /** Whether the plan itself took the last key: walking over its speakers points at none yet. */
  private walked = false;
  private readonly follow = new BenchController(this);
  private readonly check = new EarCheck(this);

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.press);
    window.addEventListener('pointerdown', this.reach, { capture: true });
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.press);
    window.removeEventListener('pointerdown', this.reach, { capture: true });
  }

  /** A speaker picked on the plan while pointing is where the sound came from. */
  protected override willUpdate(changed: PropertyValues): void {
    const picked = changed.has('selected') && !this.walked ? this.selected : null;
    if (picked && this.check.pointing) this.heardFrom(picked);
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    if (state.document.rig === 'recording') return notHere();
    const order = wiringOrder(state);
    const channels = order.flatMap(
      (label) => state.layout.channels.find((one) => one.label === label) ?? [],
    );
    const { check } = this;
    const busy = this.isBusy(state);
    return html`<ll-waiting-card .bench=${this.bench}></ll-waiting-card>
      ${busy && state.activity.kind !== 'waiting' ? runningElsewhere(state, null) : nothing}
      <div class="sheets">
        <section class="sheet" aria-label=${msg('Ear check')}>
          ${this.now(state, order)} ${this.buttons(state, order, busy)}
          ${
            check.pointing
              ? html`<p class="point" role="status">
                  ${msg(str`Where did it come from? Click the speaker on the plan or in the list, or type its number${this.typed === '' ? '' : msg(str`: ${this.typed}…, then Enter`)}.`)}
                </p>`
              : nothing
          }
          <ll-ear-list
            .channels=${channels}
            .answers=${state.document.earAnswers}
            .at=${check.at}
            ?pointing=${check.pointing}
            ?disabled=${busy}
            @ll-speaker=${(event: CustomEvent<ChannelLabel>) =>
              check.pointing ? this.heardFrom(event.detail) : check.play(event.detail)}
          ></ll-ear-list>
        </section>
        <div class="column">
          <section class="sheet" aria-label=${msg('Conclusion')}>
            <ll-ear-conclusion
              .bench=${this.bench}
              ?disabled=${busy}
              @ll-retest=${(event: CustomEvent<readonly ChannelLabel[]>) =>
                check.retest(event.detail)}
            ></ll-ear-conclusion>
            ${this.level(state, busy)}
          </section>
        </div>
      </div>`;
  }

  private now(state: BenchState, order: readonly ChannelLabel[]) {
    const channel = state.layout.channels.find(({ label }) => label === this.check.at);
    if (!channel) {
      const { open } = concludeEarCheck(order, state.document.earAnswers);
      return html`<p>
        ${
          open.length === 0
            ? msg('Every channel was answered.')
            : msg(
                str`${open.length} of ${order.length} channels still to play. Stand at the seat, start quiet, and say of each channel where it comes from.`,
              )
        }
      </p>`;
    }
    return html`<div class="now" role="status">
      <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
      <div>
        <p class="channel">${channel.label}</p>
        <p>${this.where(state, channel, order)}</p>
      </div>
    </div>`;
  }

  private where(state: BenchState, channel: Channel, order: readonly ChannelLabel[]): string {
    const output = outputNamer(state)(channel.label);
    const place = msg(
      str`${asSentence(channel.name)}, channel ${order.indexOf(channel.label) + 1} of ${order.length}`,
    );
    const from = output === null ? '' : msg(str`, output “${output}”`);
    const { sounding, answerable } = this.check;
    const sound = sounding
      ? answerable
        ? ''
        : msg(' It begins.')
      : msg(' The noise has stopped.');
    return `${place}${from}.${sound}`;
  }

  private buttons(state: BenchState, order: readonly ChannelLabel[], busy: boolean) {
    const { check } = this;
    const { earAnswers } = state.document;
    return earButtons(
      {
        busy,
        asked: check.answerable,
        chosen: check.at !== null,
        sounding: check.sounding,
        pointing: check.pointing,
        next: check.nextOpen(state),
        canGoBack:
          check.pointing ||
          (check.at === null
            ? order.some((label) => earAnswers[label] !== undefined)
            : order.indexOf(check.at) > 0),
      },
      (action) => this.act(action),
      () => check.stop(),
    );
  }

  private level(state: BenchState, busy: boolean) {
    return html`<ll-number
        label=${msg('Level of the noise')}
        unit="dB"
        min="-60"
        max=${state.document.live.capDb}
        .value=${this.check.levelDb(state)}
        ?disabled=${busy}
        hint=${msg('At first the test level. Pink noise, 500 to 2000 Hz; subs 30 to 80 Hz.')}
        @ll-number=${(event: CustomEvent<number>) => this.check.setLevel(event.detail)}
      ></ll-number>
      <p class=${isLoud(state.exposure) ? 'signal' : 'soft small'}>
        ${msg('Start quiet: leave the room or wear hearing protection when it is loud. Esc silences everything.')}
      </p>
      ${
        state.document.rig === 'practice'
          ? html`<p class="soft small">
              ${msg('The practice room makes no sound: every output drives the speaker it claims, and the plan shows which one plays. Answers are yours, to try the check.')}
            </p>`
          : nothing
      }`;
  }

  /** Something else runs, or a plug has to be moved first. */
  private isBusy({ activity }: BenchState): boolean {
    if (activity.kind === 'waiting') return true;
    return activity.kind !== 'idle' && !this.check.owns;
  }

  private act(action: EarAction): void {
    const { check } = this;
    this.typed = '';
    switch (action) {
      case 'here':
      case 'silent':
        return check.answer({ kind: action });
      case 'elsewhere':
        check.point(!check.pointing);
        // So that the next pick on the plan is a new one, whoever was selected.
        if (check.pointing) askToSelect(this, null);
        return;
      case 'again':
        return check.again();
      case 'back':
        return check.back();
      case 'next':
        return check.next();
    }
  }

  private heardFrom(speaker: ChannelLabel): void {
    this.typed = '';
    this.check.answer({ kind: 'elsewhere', speaker });
    askToSelect(this, null);
  }

  private readonly reach = (): void => {
    this.walked = false;
  };

  private readonly press = (event: KeyboardEvent): void => {
    const { state } = this.follow;
    if (!state || state.document.rig === 'recording') return;
    if (event.key === 'Escape') return this.check.stopped();
    if (this.isBusy(state)) return;
    this.walked = event.defaultPrevented;
    if (this.walked && this.check.pointing && this.selected && /^( |Enter)$/.test(event.key)) {
      return this.heardFrom(this.selected);
    }
    if (this.check.pointing && this.typeNumber(event, wiringOrder(state))) {
      event.preventDefault();
      return;
    }
    const action = earAction(event);
    if (action === null) return;
    event.preventDefault();
    this.act(action);
  };

  /** A speaker's number, typed while pointing; true when the key was part of one. */
  private typeNumber(event: KeyboardEvent, order: readonly ChannelLabel[]): boolean {
    const digit = earDigit(event);
    const typed = digit === null ? this.typed : `${this.typed}${digit}`;
    const ended = digit === null && event.key === 'Enter' && typed !== '';
    if (digit === null && !ended) return false;
    const numbers = numbersFrom(typed, order.length);
    const speaker = order[Number(typed) - 1];
    if (speaker && (ended || numbers.length === 1)) this.heardFrom(speaker);
    else this.typed = numbers.length > 0 ? typed : '';
    return true;
  }
}

const notHere = () =>
  html`<section class="sheet" aria-label=${msg('Ear check')}>
    <p>
      ${msg('The ear check plays noise on one channel at a time, and with the recording rig this computer plays nothing. Choose Live or the practice room where speakers are reached, or play the processor’s own noise generator and go by the wiring list.')}
    </p>
    <a class="ghost" href="#probe/connect">${msg('Choose how speakers are reached')}</a>
  </section>`;

declare global {
  interface HTMLElementTagNameMap {
    'll-ear-sheet': EarSheet;
  }
}
