import { css } from 'lit';

export const earSheetStyles = css`
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

  .channel {
    font-size: clamp(2rem, 1.2rem + 2.2vw, 3rem);
    font-weight: 700;
    line-height: 1.1;
  }

  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: var(--space-2);
  }

  .tall {
    min-height: 3.25rem;
    font-size: var(--text-strong);
  }

  .on {
    border-color: var(--signal);
    background: var(--wash);
  }

  kbd {
    padding: 0 0.35em;
    border: var(--line) solid currentColor;
    border-radius: var(--radius);
    font: inherit;
    font-size: var(--text-small);
    font-weight: 400;
  }

  .point {
    color: var(--signal);
    font-weight: 700;
  }
`;
