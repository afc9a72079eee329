import { msg, str } from '@lit/localize';
import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { keyed } from 'lit/directives/keyed.js';
import type { Updates } from '../../src/offline/updates';
import type { Bench, BenchState } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import type { Trouble } from '../../src/trouble';
import { onLocaleChange } from '../../src/locale/locale-in-force';
import { BenchController } from '../bench-controller';
import { renderAnew } from '../render-anew';
import { isSimulated } from '../simulated';
import { buttonStyles } from '../controls/button-styles';
import { sharedStyles } from '../theme/shared-styles';
import { appStyles } from './app-styles';
import './new-version';
import './next-step';
import './other-tab';
import './rail';
import './session-name';
import './side';
import './history-buttons';
import { LateController, type LateView } from '../late/late-controller';
import '../late/late-failure';
import { historyKey } from './history-key';
import { iconButtonStyles } from './icon-button-styles';
import './sessions-panel';
import type { SessionsPanel } from './sessions-panel';
import './settings-button';
import './theme-button';
import '../controls/trouble-banner';
import '../strip/strip';
import { lateStages } from './late-stages';
import { stageFromHash, stageNames, stageStandings, type StageId } from './stages';

/** The whole screen: header with the rail, the plan at the side, one stage, the strip at the foot. */
@customElement('ll-app')
export class App extends LitElement {
  static override styles = [sharedStyles, buttonStyles, iconButtonStyles, appStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  /** Null where the app is not kept in the browser. */
  @property({ attribute: false }) updates: Updates | null = null;
  /** What the address names; shown as soon as it is loaded. */
  @state() private asked: StageId = stageFromHash(location.hash);
  @state() private picked: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);
  private readonly late = new LateController<StageId>(this, lateStages);
  private stage: StageId = this.asked;
  private leaveLocale = (): void => undefined;
  /** Whether the address has changed, and what it names is not shown from its top yet. */
  private arrives = false;

  constructor() {
    super();
    this.addEventListener('ll-select', (event) => (this.picked = event.detail));
    this.addEventListener('ll-go', (event) => (location.hash = event.detail));
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.leaveLocale = onLocaleChange(() => renderAnew(document));
    window.addEventListener('hashchange', this.readHash);
    window.addEventListener('keydown', this.stopOnEscape, { capture: true });
    window.addEventListener('keydown', this.walkHistory);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.leaveLocale();
    window.removeEventListener('hashchange', this.readHash);
    window.removeEventListener('keydown', this.stopOnEscape, { capture: true });
    window.removeEventListener('keydown', this.walkHistory);
  }

  protected override render(): TemplateResult | typeof nothing {
    const bench = this.bench;
    const now = this.follow.state;
    if (!bench || !now) return nothing;
    const view = this.late.show(this.asked);
    this.stage = view.here;
    const standings = stageStandings(now);
    const selected = now.layout.channels.some((one) => one.label === this.picked)
      ? this.picked
      : null;
    return html`
      ${renderHeader(bench, now, () => void this.panel?.open())}
      <ll-rail .standings=${standings} .here=${this.asked}></ll-rail>
      <ll-side .bench=${bench} .selected=${selected} .stage=${this.stage}></ll-side>
      <main
        tabindex="-1"
        aria-label=${stageNames[this.stage]}
        aria-busy=${view.trouble === null && !(view.there && view.here === this.asked)}
      >
        <ll-other-tab .bench=${bench}></ll-other-tab>
        ${this.renderNewVersion(bench)} ${this.renderTrouble(bench, now)}
        ${view.there ? keyed(refusal(now), this.renderStage(bench, selected)) : this.renderMissing(view)}
        <ll-next-step .standings=${standings} .here=${this.stage}></ll-next-step>
      </main>
      <ll-strip .bench=${bench}></ll-strip>
      <ll-sessions-panel .bench=${bench} .updates=${this.updates}></ll-sessions-panel>
    `;
  }

  protected override updated(): void {
    document.title = msg(str`${stageNames[this.stage]} · Leadline`);
    if (!this.arrives || this.stage !== this.asked) return;
    this.arrives = false;
    this.renderRoot.querySelector('main')?.scrollTo(0, 0);
    window.scrollTo(0, 0);
  }

  private renderNewVersion(bench: Bench): TemplateResult | typeof nothing {
    if (this.updates === null) return nothing;
    return html`<ll-new-version .bench=${bench} .updates=${this.updates}></ll-new-version>`;
  }

  private renderTrouble(bench: Bench, now: BenchState): TemplateResult | typeof nothing {
    const besideItsField = this.stage === 'plan' && now.trouble?.trouble === 'bad-layout';
    return html`<ll-trouble
      class=${besideItsField || now.trouble === null ? 'quiet' : ''}
      .trouble=${besideItsField ? null : now.trouble}
      @ll-dismiss=${() => bench.dismissTrouble()}
    ></ll-trouble>`;
  }

  private renderStage(bench: Bench, selected: ChannelLabel | null): TemplateResult {
    switch (this.stage) {
      case 'plan':
        return html`<ll-plan .bench=${bench} .selected=${selected}></ll-plan>`;
      case 'patch':
        return html`<ll-patch .bench=${bench} .selected=${selected}></ll-patch>`;
      case 'probe':
        return html`<ll-probe .bench=${bench} .selected=${selected}></ll-probe>`;
      case 'propose':
        return html`<ll-propose .bench=${bench} .selected=${selected}></ll-propose>`;
      case 'prove':
        return html`<ll-prove .bench=${bench} .selected=${selected}></ll-prove>`;
    }
  }

  /** In the place of a stage that is on its way, or did not come. */
  private renderMissing({ here, trouble }: LateView<StageId>): TemplateResult {
    if (trouble === null) return html`<h1>${stageNames[here]}</h1>`;
    return html`<ll-late-failure
      name=${stageNames[here]}
      .trouble=${trouble}
      @ll-again=${() => this.late.again()}
    ></ll-late-failure>`;
  }

  private readonly readHash = (): void => {
    this.asked = stageFromHash(location.hash);
    this.arrives = true;
    this.requestUpdate();
  };

  private get panel(): SessionsPanel | null {
    return this.renderRoot.querySelector('ll-sessions-panel');
  }

  private readonly walkHistory = (event: KeyboardEvent): void => {
    const way = event.defaultPrevented ? null : historyKey(event);
    if (way === null) return;
    event.preventDefault();
    this.renderRoot.querySelector('ll-history-buttons')?.walk(way);
  };

  /** Esc silences everything, also from inside a field, before anything else may use the key. */
  private readonly stopOnEscape = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    // Where nothing sounds, Esc first closes the dialog it was pressed in.
    const silent = this.bench?.state.activity.kind === 'reading';
    if (silent && event.composedPath().some((at) => at instanceof HTMLDialogElement)) return;
    this.bench?.stop();
  };
}

/**
 * In a tab that only follows, the trouble of the last change it refused: what lets things be entered
 * is then drawn anew, as they are.
 */
function refusal({ saved, trouble }: BenchState): Trouble | null {
  return saved === 'elsewhere' ? trouble : null;
}

function renderHeader(bench: Bench, now: BenchState, showSessions: () => void): TemplateResult {
  const simulated = isSimulated(now);
  return html`<header>
    <a class="mark" href="#plan" aria-label=${msg('Leadline, to the plan')}>
      <svg viewBox="0 0 16 30" aria-hidden="true">
        <path class="line" d="M8 0V18"></path>
        <path class="bob" d="M3 18h10l-5 11z"></path>
      </svg>
      <span>${msg('Leadline')}</span>
    </a>
    <div class="session">
      ${keyed(
        refusal(now),
        html`<ll-session-name
          .name=${now.document.name}
          @ll-rename=${(event: CustomEvent<string>) =>
            bench.change(msg('Rename session'), (document) => ({
              ...document,
              name: event.detail,
            }))}
        ></ll-session-name>`,
      )}
      <button
        class="icon sessions"
        aria-label=${msg('Sessions')}
        aria-haspopup="dialog"
        title=${msg('Sessions: open, save as a file, copy, delete')}
        @click=${showSessions}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M4 8l6 6 6-6"></path>
        </svg>
      </button>
      <span class="num layout">${now.layout.title}</span>
    </div>
    <ll-history-buttons .bench=${bench}></ll-history-buttons>
    ${
      simulated
        ? html`<span
            class="simulated"
            title=${msg('No loudspeaker and no microphone: the room is computed.')}
            >${msg(html`Simulated<span class="where">&nbsp;practice room</span>`)}</span
          >`
        : nothing
    }
    <ll-settings-button></ll-settings-button>
    <ll-theme-button></ll-theme-button>
  </header>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-app': App;
  }
}
