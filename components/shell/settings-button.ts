import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing, type TemplateResult } from 'lit';
import { customElement, query, state } from 'lit/decorators.js';
import { dateText } from '../../src/locale/date-text';
import { languages, ownLanguage } from '../../src/language/languages';
import { choosePreferences, localeOf, readPreferences } from '../../src/locale/kept-preferences';
import { lengthText } from '../../src/locale/length-text';
import type { LocalePreferences, Units } from '../../src/locale/locale';
import { localeInForce } from '../../src/locale/locale-in-force';
import { dbText } from '../../src/locale/number-text';
import { temperatureText } from '../../src/locale/temperature-text';
import type { Theme } from '../../src/session/document';
import { buttonStyles } from '../controls/button-styles';
import '../controls/choice';
import type { ChoiceOption } from '../controls/choice';
import { sharedStyles } from '../theme/shared-styles';
import { iconButtonStyles } from './icon-button-styles';
import { ThemeController } from './theme-controller';
import { sessionsStyles } from './sessions-styles';

const unitWords = (units: Units): string => (units === 'metric' ? msg('Metric') : msg('Imperial'));

/** Ways to write numbers and dates that can be chosen, by what they look like in English. */
const ways = (): ChoiceOption[] => [
  { value: 'en-GB', label: msg('1.5, 31 January') },
  { value: 'en-US', label: msg('1.5, January 31') },
  { value: 'de-DE', label: msg('1,5, 31 January') },
];

/** Opens what is chosen on this machine: units, the way numbers and dates are written, the theme. */
@customElement('ll-settings-button')
export class SettingsButton extends LitElement {
  static override styles = [
    sharedStyles,
    buttonStyles,
    iconButtonStyles,
    sessionsStyles,
    css`
      dialog {
        width: min(34rem, calc(100vw - 1.5rem));
      }

      @media (max-width: 56rem) {
        .icon {
          width: 2.25rem;
        }
      }
    `,
  ];

  @query('dialog') private readonly dialog!: HTMLDialogElement | null;
  private readonly themes = new ThemeController(this);
  /** Nothing is drawn while the dialog is closed. */
  @state() private shown = false;
  /** What a choice ran into. */
  @state() private fault: string | null = null;

  protected override render(): TemplateResult {
    const said = msg(
      str`Settings: ${unitWords(localeInForce().units).toLowerCase()} units, numbers, theme.`,
    );
    return html`<button
        class="icon"
        aria-label=${said}
        aria-haspopup="dialog"
        title=${said}
        @click=${() => void this.open()}
      >
        <svg viewBox="0 0 20 20" aria-hidden="true">
          <path d="M2.5 6.5h15v7h-15zM5.5 6.5v3M8.5 6.5v4M11.5 6.5v3M14.5 6.5v4"></path>
        </svg>
      </button>
      ${
        this.shown
          ? html`<dialog aria-labelledby="title" @close=${() => (this.shown = false)}>
              ${this.renderContent(readPreferences())}
            </dialog>`
          : nothing
      }`;
  }

  private async open(): Promise<void> {
    this.shown = true;
    await this.updateComplete;
    if (this.dialog?.open === false) this.dialog.showModal();
  }

  private renderContent(now: LocalePreferences): TemplateResult {
    const usual = localeOf({ ...now, units: null }).units;
    return html`<div class="content">
      <div class="head">
        <h2 id="title">${msg('Settings')}</h2>
        <button class="ghost" @click=${() => this.dialog?.close()}>${msg('Close')}</button>
      </div>
      ${this.renderLanguages(now)}
      <ll-choice
        label=${msg('Lengths and temperatures')}
        .options=${[
          { value: '', label: msg(str`As the browser: ${unitWords(usual).toLowerCase()}`) },
          { value: 'metric', label: unitWords('metric') },
          { value: 'imperial', label: unitWords('imperial') },
        ]}
        .value=${now.units ?? ''}
        @ll-pick=${(event: CustomEvent<string>) =>
          void this.choose({ ...now, units: unitsOf(event.detail) })}
      ></ll-choice>
      <ll-choice
        label=${msg('Numbers and dates')}
        .options=${[{ value: '', label: msg('As the browser') }, ...ways()]}
        .value=${now.numbers ?? ''}
        @ll-pick=${(event: CustomEvent<string>) =>
          void this.choose({ ...now, numbers: event.detail === '' ? null : event.detail })}
      ></ll-choice>
      <p class="num">${this.sample()}</p>
      <ll-choice
        label=${msg('Theme')}
        .options=${[
          { value: 'system', label: msg('As the system') },
          { value: 'light', label: msg('Light') },
          { value: 'dark', label: msg('Dark') },
        ]}
        .value=${this.themes.theme}
        @ll-pick=${(event: CustomEvent<Theme>) => this.themes.choose(event.detail)}
      ></ll-choice>
      <p class="soft small">
        ${msg(
          'Kept in this browser. Either decimal mark can be typed, and other units if they are written: 2.4 m, 7\' 10.5", 94 in, 70 °F. A processor’s values stay in its own units; files keep metres and a decimal point.',
        )}
      </p>
    </div>`;
  }

  /** Where there are other languages than the program's own. */
  private renderLanguages(now: LocalePreferences): TemplateResult | typeof nothing {
    if (languages.length === 0) return nothing;
    const offered = [ownLanguage, ...languages].map(({ tag, name }) => ({
      value: tag,
      label: name,
    }));
    return html`<ll-choice
        label=${msg('Language')}
        .options=${[{ value: '', label: msg('As the browser') }, ...offered]}
        .value=${now.language ?? ''}
        @ll-pick=${(event: CustomEvent<string>) =>
          void this.choose({ ...now, language: event.detail === '' ? null : event.detail })}
      ></ll-choice>
      ${this.fault === null ? nothing : html`<p role="alert">${this.fault}</p>`}`;
  }

  /** A few values as all texts write them now. */
  private sample(): string {
    const day = dateText(new Date(2026, 0, 31, 14, 5).toISOString());
    return [lengthText(2.4), temperatureText(21.5), dbText(-1.5), day].join(' · ');
  }

  private async choose(preferences: LocalePreferences): Promise<void> {
    const taken = await choosePreferences(preferences);
    this.fault = taken
      ? null
      : msg('The texts of that language did not load. Look at the connection and choose again.');
    this.requestUpdate();
  }
}

function unitsOf(value: string): Units | null {
  return value === 'metric' || value === 'imperial' ? value : null;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-settings-button': SettingsButton;
  }
}
