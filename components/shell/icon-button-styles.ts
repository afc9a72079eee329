import { css } from 'lit';

/** A button of the header that shows a drawing alone; its name is in its label. */
export const iconButtonStyles = css`
  .icon {
    display: grid;
    place-items: center;
    flex: none;
    width: var(--target);
    height: var(--target);
    padding: 0;
    border: 0;
    border-radius: var(--radius);
    background: none;
  }

  .icon:hover:not(:disabled) {
    background: var(--track);
  }

  .icon:disabled {
    opacity: 0.55;
  }

  .icon svg {
    width: 1.25rem;
    height: 1.25rem;
    fill: none;
    stroke: currentColor;
    stroke-width: 1.6;
    stroke-linecap: round;
    stroke-linejoin: round;
  }
`;
