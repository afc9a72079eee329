import { css } from 'lit';

/** The page on screen and in print: black on white, lines instead of hues. */
export const handoverStyles = css`
  .handover {
    --paper: #fff;
    --sheet: #fff;
    --ink: #000;
    --soft: #333;
    --rule: #bbb;
    --edge: #777;
    position: relative;
    z-index: 0;
    overflow: hidden;
    color: #000;
    background: #fff;
    font: 8.5pt / 1.25 var(--face);
    container-type: inline-size;
  }

  .handover.simulated::before {
    content: 'simulated';
    position: absolute;
    top: 42%;
    right: 0;
    left: 0;
    z-index: -1;
    color: #e3e3e3;
    font-size: 15cqi;
    font-weight: 700;
    line-height: 1;
    text-align: center;
    rotate: -35deg;
    /* Else print darkens what is light, and numbers drown in it. */
    print-color-adjust: exact;
  }

  .handover h2 {
    margin: 0;
    font-size: 14pt;
    overflow-wrap: anywhere;
  }

  .handover h3 {
    margin: 2mm 0 0.5mm;
    font-size: 10pt;
    break-after: avoid;
  }

  .handover p,
  .handover dl,
  .handover dd,
  .handover ul,
  .handover figure {
    margin: 0;
  }

  .handover p,
  .handover li {
    max-width: none;
    overflow-wrap: anywhere;
  }

  .handover ul {
    padding-left: 4mm;
  }

  .handover ul.proof {
    padding: 0;
    list-style: none;
  }

  .handover .columns {
    display: grid;
    grid-template-columns: minmax(0, 1fr);
    gap: 2mm 6mm;
  }

  .handover dl > div {
    display: flex;
    flex-wrap: wrap;
    gap: 0 3mm;
    justify-content: space-between;
    border-bottom: 0.2mm solid #ccc;
  }

  .handover dd {
    overflow-wrap: anywhere;
  }

  .handover table {
    width: 100%;
    margin: 0;
    border-collapse: collapse;
  }

  .handover th,
  .handover td {
    padding: 0.3mm 2mm 0.3mm 0;
    border-bottom: 0.2mm solid #ccc;
    color: #000;
    font-size: 8.5pt;
    text-align: left;
    vertical-align: middle;
    overflow-wrap: anywhere;
  }

  .handover th {
    font-weight: 700;
  }

  .handover .notes {
    white-space: pre-wrap;
    orphans: 3;
    widows: 3;
  }

  .handover li {
    font-size: 8.5pt;
    break-inside: avoid;
  }

  .handover tr,
  .handover dl > div {
    break-inside: avoid;
  }

  .handover .plan {
    display: block;
    width: 100%;
    max-width: 66mm;
    height: auto;
    margin-inline: auto;
  }

  .handover text {
    fill: #000;
    font: 400 13px var(--face);
    text-anchor: middle;
  }

  .handover .ring-label {
    fill: #333;
    font-size: 11.5px;
  }

  .handover .ring {
    fill: none;
    stroke: #bbb;
  }

  .handover .wall {
    fill: none;
    stroke: #000;
  }

  .handover .seat,
  .handover .leader {
    fill: none;
    stroke: #777;
  }

  .handover .shape {
    fill: #fff;
    stroke: #000;
    stroke-width: 2;
  }

  .handover .height .shape,
  .handover .bounce {
    fill: none;
    stroke: #000;
  }

  .handover .unmeasured .shape {
    stroke-dasharray: 3 2.5;
  }

  .handover .curve {
    display: none;
    width: 38mm;
  }

  .handover .response {
    display: block;
    width: 36mm;
    height: auto;
  }

  .handover .response path {
    fill: none;
    stroke: #000;
    stroke-width: 1;
  }

  .handover .response .grid {
    stroke: #bbb;
    stroke-width: 0.5;
  }

  @container (min-width: 30rem) {
    .handover .columns {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }

    .handover .curve {
      display: table-cell;
    }

    .handover ul {
      columns: 2;
      column-gap: 6mm;
    }
  }

  @media print {
    .handover {
      container-type: normal;
      overflow: visible;
    }

    /* Fixed, it stands on every page. */
    .handover.simulated::before {
      position: fixed;
      font-size: 26mm;
    }

    .handover .columns {
      grid-template-columns: minmax(0, 1fr) minmax(0, 1fr);
    }

    .handover .curve {
      display: table-cell;
    }

    .handover ul {
      columns: 2;
      column-gap: 6mm;
    }
  }
`;
