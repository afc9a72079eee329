import { smallLengthText } from '../../../src/locale/length-text';
import { msg, str } from '@lit/localize';
import { LitElement, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { ChannelLabel } from '../../../src/system/channel';
import { isTrouble } from '../../../src/trouble';
import { BenchController } from '../../bench-controller';
import { durationText } from '../../../src/locale/number-text';
import { buttonStyles } from '../../controls/button-styles';
import '../../controls/check-field';
import '../../controls/number-field';
import '../../controls/progress-bar';
import { asSentence } from '../../plan/layout-words';
import '../../plan/speaker-icon';
import { isLoud } from '../../probe/level/exposure-words';
import { runningElsewhere } from '../../probe/running-elsewhere';
import { plannedTakes } from '../../probe/routing/route-preview';
import '../../probe/take/waiting-card';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { checkStyles } from '../check-styles';
import './seat-check';
import './walk-conclusion';
import { WalkCourse } from './walk-course';
import './walk-list';
import { walkOrder } from './walk-order';
import { walkSheetStyles } from './walk-sheet-styles';
import { walkResult } from './walk-words';

/** The walk check: the microphone held to one speaker after another while all channels sound in turn. */
@customElement('ll-walk-sheet')
export class WalkSheet extends LitElement {
  static override styles = [sharedStyles, stageStyles, buttonStyles, checkStyles, walkSheetStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);
  private readonly course = new WalkCourse(this);

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.press);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.press);
  }

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    if (state.document.rig === 'recording') return notHere();
    const { layout, document } = state;
    const busy = state.activity.kind !== 'idle';
    const mine = state.activity.kind === 'walking' || state.activity.kind === 'waiting';
    const next = this.course.next(state);
    const channels = walkOrder(layout).flatMap(
      (label) => layout.channels.find((one) => one.label === label) ?? [],
    );
    return html`<ll-waiting-card .bench=${this.bench}></ll-waiting-card>
      ${busy && !mine ? runningElsewhere(state, null) : nothing}
      <div class="sheets">
        <section class="sheet" aria-label=${msg('Walk')}>
          ${this.now(state, next)} ${this.buttons(state, next, busy)} ${this.rounds(state, busy)}
          <ll-walk-list
            .channels=${channels}
            .walk=${document.walk}
            .result=${walkResult(document.walk, layout, document.system)}
            .at=${next}
            ?disabled=${busy}
            @ll-speaker=${(event: CustomEvent<ChannelLabel>) => this.course.choose(event.detail)}
          ></ll-walk-list>
          ${this.ways(busy)}
        </section>
        <div class="column">
          ${
            document.walk.length === 0
              ? nothing
              : html`<section class="sheet" aria-label=${msg('Conclusion')}>
                  <ll-walk-conclusion .bench=${this.bench} ?disabled=${busy}></ll-walk-conclusion>
                </section>`
          }
          <section class="sheet" aria-label=${msg('From the seat')}>
            <ll-seat-check
              .bench=${this.bench}
              ?disabled=${busy}
              @ll-from-seat=${() => void this.course.play('seat')}
            ></ll-seat-check>
          </section>
        </div>
      </div>`;
  }

  private now(state: BenchState, next: ChannelLabel | null) {
    const { activity, layout } = state;
    if (activity.kind === 'walking') {
      const where = activity.at === 'seat' ? msg('the seat') : activity.at;
      const sounds = activity.channel === null ? msg('a moment of quiet') : activity.channel;
      return html`<div class="now" role="status">
          <p class="label">${msg(str`Hold still at ${where}`)}</p>
          <p>${msg(str`Sounding: ${sounds}. ${durationText(activity.play.secondsLeft)} left.`)}</p>
        </div>
        <ll-progress label=${msg('Stop played')} .value=${activity.play.progress}></ll-progress>`;
    }
    const channel = layout.channels.find(({ label }) => label === next);
    if (!channel) {
      return html`<p role="status">
        ${msg('Every speaker was visited. Choose one below to visit it again.')}
      </p>`;
    }
    const { countdown } = this.course;
    return html`<div class="now" role="status">
      <ll-speaker-icon .channel=${channel}></ll-speaker-icon>
      <div>
        <p class="label">
          ${countdown === null ? msg('To') : msg(str`In ${countdown} s at`)} ${channel.label}
        </p>
        <p>
          ${msg(str`${asSentence(channel.name)}. Hold the microphone within a hand’s length of its front, about ${smallLengthText(0.25)}.`)}
        </p>
      </div>
    </div>`;
  }

  private buttons(state: BenchState, next: ChannelLabel | null, busy: boolean) {
    const { course } = this;
    const counting = course.countdown !== null;
    return html`<div class="buttons">
      ${
        next === null
          ? nothing
          : html`<button
              class="go tall"
              data-action="play"
              ?disabled=${busy}
              @click=${(event: MouseEvent) => {
                if (event.detail > 0) (event.currentTarget as HTMLElement).blur();
                void course.play(next);
              }}
            >
              ${counting ? msg('Play now') : msg('Play here')} <kbd>${msg('Space')}</kbd>
            </button>`
      }
      <button class="ghost tall" ?disabled=${!busy && !counting} @click=${() => course.stop()}>
        ${msg(html`Stop <kbd>Esc</kbd>`)}
      </button>
      ${
        isLoud(state.exposure)
          ? html`<p class="signal">
              ${msg('Loud: leave the room between stops or wear hearing protection.')}
            </p>`
          : nothing
      }
    </div>`;
  }

  /** More speakers than outputs: which of them sound. */
  private rounds(state: BenchState, busy: boolean) {
    const plan = plannedTakes(state);
    if (isTrouble(plan) || plan.parts.length < 2) return nothing;
    const rounds = plan.parts.map(({ schedule }) => [
      ...new Set(schedule.segments.map(({ channel }) => channel)),
    ]);
    return html`<fieldset class="rounds" ?disabled=${busy}>
      <legend>${msg('This computer’s outputs reach some of the speakers at a time')}</legend>
      ${rounds.map(
        (channels, index) =>
          html`<label>
            <input
              type="radio"
              name="round"
              .checked=${this.course.round === index}
              @change=${() => {
                this.course.round = index;
                this.requestUpdate();
              }}
            />
            <span>${channels.join(' ')}</span>
          </label>`,
      )}
    </fieldset>`;
  }

  private ways(busy: boolean) {
    const { course } = this;
    return html`<ll-check
        label=${msg('Go on by itself')}
        hint=${msg('For free hands: after each stop the next one follows on its own; anything that goes wrong stops it.')}
        .checked=${course.byItself}
        @ll-check=${(event: CustomEvent<boolean>) => course.setByItself(event.detail)}
      ></ll-check>
      ${
        course.byItself
          ? html`<ll-number
              label=${msg('Time to walk to the next speaker')}
              unit="s"
              min="3"
              max="120"
              .value=${course.pauseSeconds}
              ?disabled=${busy}
              @ll-number=${(event: CustomEvent<number>) => (course.pauseSeconds = event.detail)}
            ></ll-number>`
          : nothing
      }
      <p class="soft small">
        ${msg('All channels sound once in turn at every stop, 12 dB under a take. Start quiet. On a ladder a second person holds it; work in ceilings and walls is left to licensed trades.')}
      </p>`;
  }

  private readonly press = (event: KeyboardEvent): void => {
    const { state } = this.follow;
    if (!state || state.document.rig === 'recording') return;
    if (event.key === 'Escape') return this.course.wait(null);
    const target = event.composedPath()[0];
    const typing =
      target instanceof HTMLElement && /^(input|button|select|textarea|a)$/i.test(target.tagName);
    if (event.key !== ' ' || typing || event.defaultPrevented || event.repeat) return;
    const next = this.course.next(state);
    if (next === null || state.activity.kind !== 'idle') return;
    event.preventDefault();
    void this.course.play(next);
  };
}

const notHere = () =>
  html`<section class="sheet" aria-label=${msg('Walk')}>
    <p>
      ${msg('The walk plays all channels from this computer, and with the recording rig it plays nothing. Choose Live or the practice room where speakers are reached, or go by ear and the wiring list.')}
    </p>
    <a class="ghost" href="#probe/connect">${msg('Choose how speakers are reached')}</a>
  </section>`;

declare global {
  interface HTMLElementTagNameMap {
    'll-walk-sheet': WalkSheet;
  }
}
