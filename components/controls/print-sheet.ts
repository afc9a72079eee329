import {
  css,
  render,
  type CSSResult,
  type ReactiveController,
  type ReactiveControllerHost,
  type TemplateResult,
} from 'lit';

/** Black on white, whatever the theme; everything else of the page is left out. */
const styles = css`
  @page {
    margin: 15mm;
  }

  @media print {
    :root,
    :root[data-theme] {
      color-scheme: light;
    }

    body {
      background: #fff;
      color: #000;
    }

    body > :not(.printed) {
      display: none;
    }

    .printed {
      font: 11pt / 1.35 var(--face);
    }

    .printed h1 {
      margin: 0 0 2mm;
      font-size: 16pt;
    }

    .printed table {
      width: 100%;
      margin-block: 4mm;
      border-collapse: collapse;
    }

    .printed thead {
      display: table-header-group;
    }

    .printed th,
    .printed td {
      padding: 1.8mm 3mm 1.8mm 0;
      border-bottom: 0.3mm solid #999;
      text-align: left;
    }

    .printed tr {
      break-inside: avoid;
    }

    .printed .box {
      display: inline-block;
      width: 5mm;
      height: 5mm;
      border: 0.4mm solid #000;
    }

    .printed li {
      font-size: 9pt;
    }
  }
`;

/**
 * While its element is on screen, printing the page prints this sheet alone: it stands beside the
 * screen only while the browser prints.
 */
export class PrintSheet implements ReactiveController {
  private readonly draw: () => TemplateResult | null;
  private box: HTMLElement | null = null;
  /** Adopted by the page, because its policy allows no style elements. */
  private readonly sheets: readonly CSSStyleSheet[];

  /** `draw` makes what is printed, in styles of its `own`; null leaves the page as it is. */
  constructor(
    host: ReactiveControllerHost,
    draw: () => TemplateResult | null,
    own: readonly CSSResult[] = [],
  ) {
    this.draw = draw;
    this.sheets = [styles, ...own].flatMap(({ styleSheet }) => styleSheet ?? []);
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('beforeprint', this.lay);
    window.addEventListener('afterprint', this.lift);
  }

  hostDisconnected(): void {
    window.removeEventListener('beforeprint', this.lay);
    window.removeEventListener('afterprint', this.lift);
    this.lift();
  }

  private readonly lay = (): void => {
    this.lift();
    const content = this.draw();
    if (content === null) return;
    this.box = document.createElement('div');
    this.box.className = 'printed';
    render(content, this.box);
    document.body.append(this.box);
    document.adoptedStyleSheets.push(...this.sheets);
  };

  private readonly lift = (): void => {
    this.box?.remove();
    this.box = null;
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter(
      (one) => !this.sheets.includes(one),
    );
  };
}
