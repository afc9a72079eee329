import { css } from 'lit';

/** A stage: its title, then sheets that stand side by side where there is room. */
export const stageStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
    container-type: inline-size;
  }

  .sheets {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
    align-items: start;
  }

  .column {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
    min-width: 0;
  }

  .sheets .sheet {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
  }

  .list {
    display: grid;
    gap: var(--space-2);
    padding-left: 1.1rem;
  }

  @container (min-width: 52rem) {
    .sheets {
      grid-template-columns: minmax(0, 1fr) minmax(0, 22rem);
    }

    .sheets.halves {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }

    .wide {
      grid-column: 1 / 3;
    }
  }
`;
