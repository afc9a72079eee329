import { css } from 'lit';

export const sheetEditorStyles = css`
  :host {
    display: grid;
    gap: var(--space-5);
    container-type: inline-size;
  }

  .part {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-2);
  }

  .group {
    display: grid;
    gap: var(--space-2);
    padding-left: var(--space-3);
    border-left: 3px solid var(--rule);
  }

  .fields {
    display: grid;
    grid-template-columns: repeat(auto-fit, minmax(min(100%, 9rem), 1fr));
    align-items: start;
    gap: var(--space-3);
  }

  .row {
    display: grid;
    grid-template-columns: minmax(0, 1fr) auto;
    align-items: end;
    gap: var(--space-2);
  }

  .row:has([aria-invalid='true']) {
    align-items: start;
  }

  .output {
    grid-template-columns: minmax(0, 5rem) minmax(0, 1fr);
    padding-bottom: var(--space-2);
    border-bottom: var(--line) solid var(--rule);
  }

  .output.bad {
    align-items: start;
    padding-left: var(--space-2);
    border-left: 4px solid var(--signal);
  }

  .output > :nth-child(3) {
    grid-column: 1 / -1;
  }

  .tools {
    display: inline-flex;
    grid-column: 1 / -1;
    gap: var(--space-1);
  }

  .tool {
    width: var(--target);
    padding: 0;
  }

  .add {
    justify-self: start;
  }

  select[aria-invalid='true'] {
    border: 2px solid var(--signal);
  }

  .foot {
    position: sticky;
    bottom: 0;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
    padding: var(--space-3);
    border: var(--line-strong) solid var(--ink);
    border-radius: var(--radius);
    background: var(--sheet);
  }

  .foot.bad {
    border-color: var(--signal);
    background: var(--wash);
  }

  .foot p {
    flex: 1 1 16rem;
    overflow-wrap: anywhere;
  }

  .ways {
    display: inline-flex;
    flex-wrap: wrap;
    gap: var(--space-2);
  }

  /* On a phone the strip lies over the foot of the screen; fields say themselves what is wrong. */
  @media (max-width: 56rem) {
    .foot {
      position: static;
    }
  }

  @container (min-width: 44rem) {
    .two {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr) auto;
    }

    .three {
      grid-template-columns: minmax(0, 2fr) minmax(0, 1fr) minmax(0, 1fr) auto;
    }

    .output {
      grid-template-columns: 5rem minmax(0, 1fr) minmax(0, 2fr) auto;
    }

    .output > :nth-child(3),
    .tools {
      grid-column: auto;
    }
  }
`;
