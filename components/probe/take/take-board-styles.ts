import { css } from 'lit';

/** Where the parts of the Take sheet stand: rig and facts beside the lanes where there is room. */
export const takeBoardStyles = css`
  :host {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
    container-type: inline-size;
  }

  .board {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
    align-items: start;
  }

  .checks {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-4);
  }

  .running,
  .board > .sheet {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: var(--space-3);
  }

  @container (min-width: 50rem) {
    .board {
      grid-template:
        'lanes rig' auto
        'lanes facts' 1fr
        'notes facts' auto
        'checks facts' auto / minmax(0, 1fr) 20rem;
    }

    .rig {
      grid-area: rig;
    }

    .lanes {
      grid-area: lanes;
    }

    .alone .lanes {
      grid-column: 1 / 3;
    }

    .facts-of-take {
      grid-area: facts;
    }

    .notes {
      grid-area: notes;
    }

    .checks {
      grid-area: checks;
    }
  }
`;
