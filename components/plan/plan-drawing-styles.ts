import { css } from 'lit';

export const planDrawingStyles = css`
  :host {
    display: block;
    width: 100%;
    max-width: 23rem;
    margin-inline: auto;
  }

  svg {
    display: block;
    width: 100%;
    height: auto;
    overflow: hidden;
  }

  .ring {
    fill: none;
    stroke: var(--rule);
  }

  text {
    font: 400 13px var(--face);
    fill: var(--ink);
    text-anchor: middle;
  }

  .ring-label {
    font-size: 11.5px;
    fill: var(--soft);
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 4px;
  }

  /* A label stays readable where a wall runs behind it. */
  .label,
  .seat-name {
    paint-order: stroke;
    stroke: var(--paper);
    stroke-width: 3px;
  }

  .listener {
    fill: var(--ink);
  }

  .mark circle {
    fill: var(--paper);
  }

  .mark path {
    fill: none;
    stroke: var(--ok);
    stroke-width: 2.5;
  }

  .mark.wrong path {
    stroke: var(--signal);
  }

  .speaker {
    cursor: pointer;
    outline: none;
  }

  .hit {
    fill: transparent;
  }

  .shape {
    fill: var(--sheet);
    stroke: currentColor;
    stroke-width: 2;
    stroke-linejoin: round;
  }

  .bounce {
    fill: none;
    stroke: currentColor;
    stroke-width: 1.6;
  }

  .chosen .bounce {
    stroke: var(--sheet);
  }

  .wall {
    fill: none;
    stroke: var(--ink);
    stroke-width: 1.5;
  }

  .seat {
    fill: none;
    stroke: var(--soft);
    stroke-width: 1.5;
    stroke-linejoin: round;
  }

  .seat-name {
    fill: var(--soft);
    font-size: 11.5px;
  }

  /* A ring hangs above what stands below it, which stays visible through it. */
  .height .shape {
    fill: none;
  }

  .unmeasured .shape {
    stroke-dasharray: 3 2.5;
  }

  .partner .shape {
    stroke-width: 3.5;
  }

  .chosen .shape {
    fill: currentColor;
    stroke-dasharray: none;
  }

  .chosen .label {
    font-weight: 700;
  }

  .leader {
    fill: none;
    stroke: var(--edge);
    stroke-width: 0.8;
  }

  .flag {
    fill: var(--signal);
    stroke: var(--paper);
  }

  .halo {
    fill: none;
    stroke: none;
    stroke-width: 2;
  }

  .speaker:hover .halo {
    stroke: var(--edge);
  }

  .speaker:focus-visible .halo {
    stroke: var(--signal);
  }

  .playing .halo {
    stroke: var(--signal);
    stroke-width: 3;
    animation: sound 1.2s ease-out infinite;
  }

  @keyframes sound {
    from {
      stroke-opacity: 1;
      r: 11px;
    }

    to {
      stroke-opacity: 0.15;
      r: 18px;
    }
  }

  @media (forced-colors: active) {
    .shape {
      fill: Canvas;
    }
  }
`;
