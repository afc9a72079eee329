import { css } from 'lit';

export const walkSheetStyles = css`
  .now > p {
    grid-column: 1 / 3;
  }

  .label {
    font-size: clamp(1.6rem, 1.1rem + 2vw, 2.6rem);
    font-weight: 700;
    line-height: 1.1;
  }

  .buttons {
    align-items: center;
  }

  .tall {
    min-height: 3.5rem;
    font-size: var(--text-strong);
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
