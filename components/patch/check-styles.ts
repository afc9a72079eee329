import { css } from 'lit';

/** A check that goes from speaker to speaker: the one at hand in large, and buttons with their keys. */
export const checkStyles = css`
  .now {
    display: grid;
    grid-template-columns: auto minmax(0, 1fr);
    gap: 0 var(--space-4);
    align-items: center;
    min-height: 5.5rem;
  }

  .now ll-speaker-icon {
    width: 3.5rem;
    height: 3.5rem;
  }

  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
  }

  kbd {
    padding: 0 0.35em;
    border: var(--line) solid currentColor;
    border-radius: var(--radius);
    font: inherit;
    font-size: var(--text-small);
    font-weight: 400;
  }
`;
