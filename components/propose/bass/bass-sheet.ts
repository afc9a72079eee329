import { msg, str } from '@lit/localize';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { LedgerMend } from '../../../src/proposal/ledger-proposal';
import { recompute, type Recomputed } from '../../../src/proposal/workbench';
import type { Bench } from '../../../src/session/bench';
import { dbText, hzText } from '../../../src/locale/number-text';
import { RevealController } from '../../controls/reveal-controller';
import { sharedStyles } from '../../theme/shared-styles';
import { stageStyles } from '../../theme/stage-styles';
import { changeChoices, withMend } from '../choices/change-choices';
import { Kept } from '../../kept';
import { proposeSheetAddress } from '../propose-sheets';
import type { ProposeView } from '../propose-view';
import '../reasons/reason-list';
import './bass-ledger';
import './ledger-mends';

const rule = () =>
  msg(
    'For every channel and frequency, delivered is the speaker’s fitted roll-off through its high-pass, and the subs’ through crossover, sub low-pass and low cut, as powers. They are held against the same with speaker and subs flat, so that a crossover by itself loses nothing. More than 6 dB below that it reaches nobody. Lost is what is missing of pink noise from 20 to 300 Hz, in decibels; a surplus elsewhere hides nothing. Phase is left to the sum.',
  );

/** The third sheet of Propose: the whole bass ledger, with why bass is lost and what mends it. */
@customElement('ll-bass-sheet')
export class BassSheet extends LitElement {
  static override styles = [
    sharedStyles,
    stageStyles,
    css`
      @container (min-width: 52rem) {
        .sheets {
          grid-template-columns: minmax(0, 1fr) minmax(0, 26rem);
        }
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) view: ProposeView | null = null;
  private readonly kept = new Kept<Recomputed['ledger']>();

  constructor() {
    super();
    new RevealController(this, proposeSheetAddress('bass'));
  }

  override render() {
    const { view, bench } = this;
    if (!view) return nothing;
    const { proposal, layout, readings, settings } = view;
    const { lfe, ledger, groups } = proposal;
    const hasSubs = layout.channels.some(({ kind }) => kind === 'sub');
    return html`<div class="sheets">
      <section class="sheet" aria-labelledby="ledger">
        <h2 id="ledger">${msg('Where each channel’s low end goes')}</h2>
        <ll-bass-ledger
          .lines=${this.lines(view)}
          .unknown=${ledger.proposed.unknown}
          .layout=${layout}
          .carrier=${hasSubs ? 'subs' : 'fronts'}
          .lfeHz=${lfe.lowPassHz}
        ></ll-bass-ledger>
        <p class="soft small">${inForceText(settings)}</p>
        <div data-place="LFE">
          <ll-reasons .reasons=${lfe.reasons} .readings=${readings} .rule=${rule()}></ll-reasons>
        </div>
      </section>
      <section class="sheet" aria-label=${msg('What is lost')}>
        <ll-ledger-mends
          heading=${msg('What is lost, and what mends it')}
          .ledger=${ledger.own ?? ledger.proposed}
          .layout=${layout}
          .readings=${readings}
          .most=${Infinity}
          @ll-mend=${(event: CustomEvent<LedgerMend['change']>) =>
            changeChoices(
              bench,
              msg('Mend the bass ledger'),
              withMend(view.choices, event.detail, groups),
            )}
        ></ll-ledger-mends>
        ${
          ledger.own && worst(ledger.own) > worst(ledger.proposed) + 0.05
            ? html`<p class="soft">
                ${msg(str`As proposed, at most ${dbText(worst(ledger.proposed))} would be lost on any channel.`)}
              </p>`
            : nothing
        }
      </section>
    </div>`;
  }

  private lines({ workbench, settings }: ProposeView): Recomputed['ledger'] {
    return this.kept.of(
      [workbench, JSON.stringify(settings)],
      () => recompute(workbench, settings, []).ledger,
    );
  }
}

function worst({ lines }: { readonly lines: readonly { readonly lossDb: number }[] }): number {
  return Math.max(0, ...lines.map(({ lossDb }) => lossDb));
}

function inForceText({ subLowPassHz, lowCutHz }: ProposeView['settings']): string {
  const lowPass =
    subLowPassHz === null ? msg('no sub low-pass') : msg(str`sub low-pass ${hzText(subLowPassHz)}`);
  const lowCut = lowCutHz === null ? msg('no low cut') : msg(str`low cut ${hzText(lowCutHz)}`);
  return msg(str`With the crossovers in force, ${lowPass}, ${lowCut}.`);
}

declare global {
  interface HTMLElementTagNameMap {
    'll-bass-sheet': BassSheet;
  }
}
