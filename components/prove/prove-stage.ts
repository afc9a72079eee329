import { LitElement, html, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { ProcessorSteps, Proposal } from '../../src/proposal/proposal';
import type { Bench } from '../../src/session/bench';
import type { ChannelLabel } from '../../src/system/channel';
import { BenchController } from '../bench-controller';
import { metresText, numberText, thinSpace } from '../charts/number-text';
import { sharedStyles } from '../theme/shared-styles';
import { stageStyles } from '../theme/stage-styles';

/** Stage 5: whether what was typed works. */
@customElement('ll-prove')
export class ProveStage extends LitElement {
  static override styles = [sharedStyles, stageStyles];

  @property({ attribute: false }) bench: Bench | null = null;
  @property({ attribute: false }) selected: ChannelLabel | null = null;
  private readonly follow = new BenchController(this);

  protected override render(): TemplateResult | typeof nothing {
    const { state } = this.follow;
    if (!state) return nothing;
    const { proposal } = state;
    return html`<div class="lede">
        <h1>
          ${
            proposal
              ? 'Nothing is proved yet: the settings have only been proposed'
              : 'Nothing is proved yet: there are no settings to prove'
          }
        </h1>
      </div>
      <div class="sheets">
        <section class="sheet" aria-labelledby="lines">
          <h2 id="lines">What will have to hold</h2>
          <table>
            <thead>
              <tr>
                <th scope="col">Line</th>
                <th scope="col" class="left">Holds when</th>
                <th scope="col">Now</th>
              </tr>
            </thead>
            <tbody>
              ${lines(state.document.processor).map(
                ([line, holds]) =>
                  html`<tr>
                    <th scope="row">${line}</th>
                    <td class="left">${holds}</td>
                    <td class="soft">not measured</td>
                  </tr>`,
              )}
            </tbody>
          </table>
        </section>
        <div class="column">
          <section class="sheet" aria-labelledby="settings">
            <h2 id="settings">What is to be typed first</h2>
            ${proposal ? renderSettings(proposal) : renderNoSettings()}
          </section>
          <section class="sheet" aria-labelledby="meanwhile">
            <h2 id="meanwhile">What this version can do</h2>
            <p>
              It does not judge these lines itself yet. With the settings typed in, run another take
              through the processor in Probe: distances and levels that now read alike for all
              speakers at ear height say that the delays and trims were taken over.
            </p>
          </section>
        </div>
      </div>`;
  }
}

function lines(steps: ProcessorSteps): [string, string][] {
  const distance = metresText(steps.distanceStepMetres);
  const level = `${numberText(steps.levelStepDb, 1)}${thinSpace}dB`;
  return [
    ['Arrivals', `all speakers arrive together, to one distance step (${distance})`],
    ['Levels', `all speakers are equally loud at the seat, to one level step (${level})`],
    ['Crossover', 'speaker and subs together show no dip around the crossover'],
    ['Polarity', 'every speaker pushes when the signal does'],
    ['Bass', 'no part of any channel’s low end reaches nobody'],
  ];
}

function renderSettings(proposal: Proposal): TemplateResult {
  const crossovers = proposal.groups.filter((one) => one.crossoverHz !== null).length;
  const distances = proposal.channels.filter((one) => one.distanceMetres !== null).length;
  const trims = proposal.channels.filter((one) => one.levelTrimDb !== null).length;
  return html`<p>
      ${counted(crossovers, 'crossover')}, ${counted(distances, 'distance')} and
      ${counted(trims, 'level trim')}, each with its reason, stand in Propose.
    </p>
    <p><a href="#propose">See the settings</a></p>`;
}

function renderNoSettings(): TemplateResult {
  return html`<p>Settings come from a take: run one first.</p>
    <p><a href="#probe">Go to Probe</a></p>`;
}

function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'll-prove': ProveStage;
  }
}
