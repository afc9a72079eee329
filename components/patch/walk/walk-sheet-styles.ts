import { css } from 'lit';

export const walkSheetStyles = css`
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

  .now > p {
    grid-column: 1 / 3;
  }

  .label {
    font-size: clamp(1.6rem, 1.1rem + 2vw, 2.6rem);
    font-weight: 700;
    line-height: 1.1;
  }

  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
    align-items: center;
  }

  .tall {
    min-height: 3.5rem;
    font-size: var(--text-strong);
  }

  kbd {
    padding: 0 0.35em;
    border: var(--line) solid currentColor;
    border-radius: var(--radius);
    font: inherit;
    font-size: var(--text-small);
    font-weight: 400;
  }

  .rounds {
    display: grid;
    gap: var(--space-1);
    margin: 0;
    padding: 0;
    border: 0;
  }

  .rounds label {
    display: grid;
    grid-template-columns: 1.25rem minmax(0, 1fr);
    gap: var(--space-2);
    align-items: center;
    min-height: var(--target);
  }
`;
