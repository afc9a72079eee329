import { msg } from '@lit/localize';
import { groupWord } from '../../../src/system/group-word';
import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { GroupId } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import { hzText } from '../../../src/locale/number-text';
import { selectStyles } from '../../controls/select-styles';
import { asSentence } from '../../plan/layout-words';
import { sharedStyles } from '../../theme/shared-styles';
import { changeInForce, withEntry } from './change-in-force';

/** The crossover each group runs at now: a step, full range, or not known. */
@customElement('ll-crossovers-in-force')
export class CrossoversInForce extends LitElement {
  static override styles = [
    sharedStyles,
    selectStyles,
    css`
      :host {
        display: grid;
        gap: var(--space-3);
      }

      .picks {
        display: grid;
        grid-template-columns: repeat(auto-fit, minmax(min(100%, 9rem), 1fr));
        gap: var(--space-3);
      }
    `,
  ];

  @property({ attribute: false }) bench: Bench | null = null;
  private readonly follow = new BenchController(this);

  override render() {
    const { state } = this.follow;
    if (!state) return nothing;
    const groups = crossedGroups(state);
    const forAll = state.document.sheet?.crossover.setting === 'one for all';
    return html`<div class="picks">
        ${
          forAll
            ? this.pick(state, msg('All speakers'), groups)
            : groups.map((group) => this.pick(state, asSentence(groupWord(group)), [group]))
        }
        ${hasSubs(state) ? this.pick(state, msg('Low-pass of the subs'), ['subs']) : nothing}
      </div>
      <p class="soft small">${consequence(state, groups)}</p>`;
  }

  private pick(state: BenchState, label: string, groups: readonly GroupId[]) {
    const { inForce, processor, sheet } = state.document;
    const [first] = groups;
    const now = first === undefined ? undefined : inForce.crossoverHz[first];
    const isSubs = first === 'subs';
    const steps = [...((isSubs ? sheet?.subLowPass.stepsHz : null) ?? processor.crossoverHz)];
    if (typeof now === 'number' && !steps.includes(now)) steps.push(now);
    const options = [
      [msg('not known'), undefined],
      [isSubs ? msg('none') : msg('full range'), null],
      ...steps.map((hz) => [hzText(hz), hz] as const),
    ] as const;
    return html`<label class="select">
      <span>${label}</span>
      <select
        ?disabled=${state.activity.kind !== 'idle'}
        @change=${(event: Event) => {
          const option = options[(event.currentTarget as HTMLSelectElement).selectedIndex];
          if (option) this.set(groups, option[1]);
        }}
      >
        ${options.map(
          ([words, value]) => html`<option .selected=${value === now}>${words}</option>`,
        )}
      </select>
    </label>`;
  }

  private set(groups: readonly GroupId[], hz: number | null | undefined): void {
    changeInForce(this.bench, msg('Declare a crossover in force'), (inForce) => ({
      ...inForce,
      crossoverHz: groups.reduce(
        (crossovers, group) => withEntry(crossovers, group, hz),
        inForce.crossoverHz,
      ),
    }));
  }
}

function hasSubs({ layout }: BenchState): boolean {
  return layout.channels.some(({ kind }) => kind === 'sub');
}

/** What a crossover in force means for the readings. */
function consequence(state: BenchState, groups: readonly GroupId[]): string {
  const { crossoverHz } = state.document.inForce;
  const crossed = groups.some((group) => typeof crossoverHz[group] === 'number');
  if (!crossed) return msg('What is not known is read as full range.');
  return hasSubs(state)
    ? msg(
        'The subs play what lies below, also in the sweep of a speaker: its arrival and level hold, its roll-off can be told only above. Set it to full range for a moment to read all of it.',
      )
    : msg(
        'It is divided out of the response as far as the noise allows; a roll-off below that needs full range for a moment.',
      );
}

/** Groups of the layout that have a crossover, in its order. */
function crossedGroups({ layout }: BenchState): GroupId[] {
  return [...new Set(layout.channels.map(({ group }) => group))].filter(
    (group) => group !== 'subs',
  );
}

declare global {
  interface HTMLElementTagNameMap {
    'll-crossovers-in-force': CrossoversInForce;
  }
}
