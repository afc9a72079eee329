import { msg } from '@lit/localize';
import { html } from 'lit';
import type { Channel, ChannelLabel } from '../../src/system/channel';
import { askToSelect } from '../events';

/** A list of speakers to choose the shown one from; `from` asks for the one that is picked. */
export function speakerSelect(
  from: HTMLElement,
  channels: readonly Pick<Channel, 'label' | 'name'>[],
  here: ChannelLabel,
) {
  return html`<label class="select">
    <span>${msg('Speaker')}</span>
    <select
      @change=${(event: Event) => {
        const { value } = event.currentTarget as HTMLSelectElement;
        const picked = channels.find(({ label }) => label === value);
        if (picked) askToSelect(from, picked.label);
      }}
    >
      ${channels.map(
        ({ label, name }) =>
          html`<option value=${label} .selected=${label === here}>${label}, ${name}</option>`,
      )}
    </select>
  </label>`;
}
