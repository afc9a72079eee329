import { LitElement, css, html, nothing } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Bench, BenchState } from '../../../src/session/bench';
import type { GroupId } from '../../../src/system/channel';
import { BenchController } from '../../bench-controller';
import { hzText } from '../../charts/number-text';
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
    if (state.document.sheet?.crossover.setting === 'one for all' && groups[0]) {
      return this.pick(state, 'All speakers', groups);
    }
    return groups.map((group) => this.pick(state, asSentence(group), [group]));
  }

  private pick(state: BenchState, label: string, groups: readonly GroupId[]) {
    const { inForce, processor } = state.document;
    const [first] = groups;
    const now = first === undefined ? undefined : inForce.crossoverHz[first];
    const steps = [...processor.crossoverHz];
    if (typeof now === 'number' && !steps.includes(now)) steps.push(now);
    const options = [
      ['not known', undefined],
      ['full range', null],
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
    changeInForce(this.bench, 'Declare a crossover in force', (inForce) => ({
      ...inForce,
      crossoverHz: groups.reduce(
        (crossovers, group) => withEntry(crossovers, group, hz),
        inForce.crossoverHz,
      ),
    }));
  }
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
