import { css } from 'lit';

/** Lines, areas and the cursor of the response chart. */
export const responseStyles = css`
  .frame {
    position: relative;
  }

  .readout {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-3);
    align-content: center;
    min-height: 3em;
    font-size: var(--text-small);
    flex: 1 1 16rem;
  }

  .readout b {
    font-weight: 700;
  }

  .narrow .readout {
    order: 2;
    flex-basis: 100%;
  }

  .marks {
    display: flex;
    flex-wrap: wrap;
    gap: 0 var(--space-4);
    margin-block-start: var(--space-2);
  }

  .range {
    display: inline-flex;
  }

  .range button + button {
    margin-inline-start: -1px;
  }

  .range button[aria-pressed='true'] {
    background: var(--ink);
    border-color: var(--ink);
    color: var(--on-ink);
  }

  .cursor {
    position: absolute;
    cursor: crosshair;
    touch-action: pan-y;
  }

  .curve {
    fill: none;
    stroke-width: 1.4;
    stroke-linejoin: round;
  }

  .curve.lead {
    stroke-width: 2.4;
  }

  .fit {
    fill: none;
    stroke-width: 1.6;
    stroke-dasharray: 6 4;
  }

  .fit-band {
    opacity: 0.16;
  }

  .noise {
    fill: none;
    stroke: var(--soft);
    stroke-width: 1;
    stroke-dasharray: 1 3;
    stroke-linecap: round;
  }

  .noise-area {
    fill: var(--soft);
    opacity: 0.1;
  }

  .crossover {
    stroke: var(--signal);
    stroke-width: 2;
  }

  .proposed {
    stroke: var(--signal);
    stroke-width: 1.5;
    stroke-dasharray: 3 4;
  }

  .knob {
    fill: var(--signal);
  }

  .whisker {
    stroke-width: 2;
  }

  .cursor-line {
    stroke: var(--ink);
    stroke-width: 1;
  }

  .cursor-dot {
    stroke: var(--sheet);
    stroke-width: 1.5;
  }
`;
