import { msg } from '@lit/localize';
import { html, nothing } from 'lit';
import type { EarAction } from './ear-keys';

interface ButtonState {
  readonly busy: boolean;
  /** Whether a channel can be answered. */
  readonly asked: boolean;
  /** Whether a channel is in hand, answered or not. */
  readonly chosen: boolean;
  readonly sounding: boolean;
  readonly pointing: boolean;
  /** The channel that Space plays; null when all are answered. */
  readonly next: string | null;
  readonly canGoBack: boolean;
}

/** The ear check's buttons, each with its key. */
export function earButtons(now: ButtonState, act: (action: EarAction) => void, stop: () => void) {
  const { busy, asked, pointing } = now;
  const button = (
    action: EarAction,
    words: string,
    key: string,
    disabled: boolean,
    kind = 'ghost',
  ) =>
    html`<button
      class="${kind} ${pointing && action === 'elsewhere' ? 'on' : ''}"
      data-action=${action}
      ?disabled=${busy || disabled}
      @click=${(event: MouseEvent) => {
        // After a press by mouse, Space shall play the next and not press the same button again.
        if (event.detail > 0) (event.currentTarget as HTMLElement).blur();
        act(action);
      }}
    >
      ${words} <kbd>${key}</kbd>
    </button>`;
  return html`<div class="buttons">
      ${button('here', msg('Heard here'), 'H', !asked, 'ghost tall')}
      ${button('elsewhere', msg('Heard elsewhere'), 'E', !asked, 'ghost tall')}
      ${button('silent', msg('Silent'), 'S', !asked, 'ghost tall')}
    </div>
    <div class="buttons">
      ${
        now.next === null
          ? nothing
          : button(
              'next',
              `${now.sounding ? msg('Skip to') : msg('Play')} ${now.next}`,
              msg('Space'),
              false,
              now.sounding ? 'ghost' : 'go',
            )
      }
      ${button('again', msg('Again'), 'R', !now.chosen)}
      ${button('back', msg('Back'), 'B', !now.canGoBack)}
      <button class="ghost" ?disabled=${!now.sounding} @click=${stop}>
        ${msg(html`Stop the noise <kbd>Esc</kbd>`)}
      </button>
    </div>`;
}
