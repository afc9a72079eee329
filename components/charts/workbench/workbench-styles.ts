import { css } from 'lit';

/** Handles of the workbench chart. */
export const workbenchStyles = css`
  .handle {
    position: absolute;
    cursor: ew-resize;
    touch-action: none;
  }

  .handle-line {
    stroke: var(--signal);
    stroke-width: 2;
  }

  .handle-line.top {
    stroke: var(--sub);
    stroke-dasharray: 6 3;
  }

  .knob {
    fill: var(--signal);
  }

  rect.knob {
    fill: var(--sub);
  }

  .knob {
    stroke: var(--sheet);
    stroke-width: 1.5;
  }

  svg text.handle-text {
    fill: var(--signal);
  }

  svg text.handle-text.top {
    fill: var(--sub);
  }
`;
