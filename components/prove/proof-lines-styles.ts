import { css } from 'lit';

/** Lines of a proof, each with its mark before it. */
export const proofLinesStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
  }

  ul {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
    padding: 0;
    list-style: none;
  }

  li {
    display: grid;
    grid-template-columns: 1.6rem minmax(0, 1fr);
    gap: var(--space-2);
  }

  li > div {
    display: grid;
    gap: var(--space-1);
    justify-items: start;
    min-width: 0;
  }

  .mark {
    font-weight: 700;
    text-align: center;
  }

  .fail {
    padding-block: var(--space-2);
    border-left: 4px solid var(--signal);
    background: var(--wash);
  }

  .fail .mark {
    color: var(--signal);
  }

  .untold .mark {
    color: var(--soft);
  }

  .pass .mark {
    color: var(--ok);
  }

  .change {
    font-weight: 700;
  }

  .change a {
    font-weight: 400;
  }

  .plain {
    min-height: 2rem;
  }

  summary {
    min-height: var(--target);
    padding-block: var(--space-2);
    font-weight: 700;
    cursor: pointer;
  }
`;
