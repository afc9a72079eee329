import { css } from 'lit';

/** A line with its buttons across the page; whoever uses it says the colours of `.banner`. */
export const bannerStyles = css`
  .banner {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
    padding: var(--space-2) var(--space-4);
    border: var(--line-strong) solid;
    border-radius: var(--radius);
  }

  .banner p {
    flex: 1 1 16rem;
  }
`;
