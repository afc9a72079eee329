import { css } from 'lit';

/** Where the parts of the Probe stage stand: rig and facts beside the lanes where there is room. */
export const probeStyles = css`
  .board {
    display: grid;
    gap: var(--space-4);
    grid-template-columns: minmax(0, 1fr);
    align-items: start;
  }

  .board > .sheet {
    display: grid;
    gap: var(--space-3);
  }

  @container (min-width: 50rem) {
    .board {
      grid-template:
        'running running' auto
        'lanes rig' auto
        'lanes facts' 1fr
        'notes facts' auto / minmax(0, 1fr) 20rem;
    }

    .running {
      grid-area: running;
    }

    .rig {
      grid-area: rig;
    }

    .lanes {
      grid-area: lanes;
    }

    .running ~ .lanes {
      grid-column: 1 / 3;
    }

    .facts-of-take {
      grid-area: facts;
    }

    .notes {
      grid-area: notes;
    }
  }
`;
