import { css } from 'lit';

/** What the editor has beyond the drawing at the side. */
export const planEditorStyles = css`
  :host {
    max-width: 40rem;
    display: grid;
    gap: var(--space-2);
  }

  .ring-label,
  .label,
  .seat-name {
    stroke: var(--sheet);
  }

  .speaker {
    cursor: grab;
  }

  .dragged,
  .dragged .hit {
    cursor: grabbing;
  }

  .still .speaker {
    cursor: pointer;
  }

  .range {
    fill: none;
    stroke: currentColor;
    stroke-width: 18;
    stroke-opacity: 0.22;
  }

  .range.one {
    stroke-width: 3;
    stroke-opacity: 0.6;
  }

  .ray {
    fill: none;
    stroke: currentColor;
    stroke-width: 1;
    stroke-dasharray: 2 3;
  }

  .readout {
    font: 700 13px var(--mono);
    paint-order: stroke;
    stroke: var(--sheet);
    stroke-width: 5px;
  }

  .refused .shape {
    stroke: var(--signal);
  }

  .said {
    min-height: calc(2 * var(--text) * var(--leading));
  }
`;
