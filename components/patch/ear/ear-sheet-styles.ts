import { css } from 'lit';

export const earSheetStyles = css`
  .channel {
    font-size: clamp(2rem, 1.2rem + 2.2vw, 3rem);
    font-weight: 700;
    line-height: 1.1;
  }

  .tall {
    min-height: 3.25rem;
    font-size: var(--text-strong);
  }

  .on {
    border-color: var(--signal);
    background: var(--wash);
  }

  .point {
    color: var(--signal);
    font-weight: 700;
  }
`;
