import { css } from 'lit';

/** The page on its paper, and beside it the notes and the ways to take it along. */
export const handoverSheetStyles = css`
  .sheets .paper {
    background: #fff;
    overflow: hidden;
  }

  .ghost,
  .go {
    justify-self: start;
  }

  label {
    font-weight: 700;
  }

  textarea {
    width: 100%;
    min-height: 8rem;
    padding: var(--space-2);
    border: var(--line) solid var(--edge);
    border-radius: var(--radius);
    background: var(--sheet);
    color: var(--ink);
    font: inherit;
    resize: vertical;
  }
`;
