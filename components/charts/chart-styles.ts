import { css } from 'lit';

/** Type, rules and controls shared by the charts. */
export const chartStyles = css`
  :host {
    display: block;
    min-width: 0;
  }

  figure {
    margin: 0;
  }

  svg {
    display: block;
    overflow: visible;
  }

  svg text {
    font: 400 12.5px var(--face);
    fill: var(--ink);
  }

  svg text.tick {
    font-size: 12px;
    fill: var(--soft);
    font-variant-numeric: tabular-nums;
  }

  svg text.strong {
    font-weight: 700;
  }

  svg text.halo {
    paint-order: stroke;
    stroke: var(--sheet);
    stroke-width: 4px;
    stroke-linejoin: round;
  }

  .grid {
    stroke: var(--rule);
    stroke-width: 1;
    shape-rendering: crispedges;
  }

  .bar {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2) var(--space-4);
    align-items: center;
    justify-content: space-between;
    margin-block-end: var(--space-2);
  }

  button {
    font: inherit;
    font-size: var(--text-small);
    color: var(--ink);
    background: transparent;
    border: var(--line) solid var(--edge);
    border-radius: var(--radius);
    padding: 0.25rem 0.7rem;
    min-height: 2rem;
    cursor: pointer;
  }

  button:hover {
    border-color: var(--ink);
  }
`;
