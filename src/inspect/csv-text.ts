/** Signs a spreadsheet takes for the beginning of a formula. */
const formulaSigns = /^[=+\-@\t\r]/;
const numberText = /^(?:-?\d+(?:\.\d+)?)?$/;

/**
 * A heading and rows of numbers, or of nothing, as comma-separated values: CRLF behind every row,
 * fields with commas, quotation marks or line ends in quotation marks, those inside doubled. A
 * heading that a spreadsheet would run as a formula gets an apostrophe before it. Throws RangeError
 * when a row has another length than the heading or holds what is no number. Source: RFC 4180,
 * section 2; the apostrophe is common practice.
 */
export function csvText(heading: readonly string[], rows: Iterable<readonly string[]>): string {
  const lines = [heading.map((text) => quoteField(defuse(text))).join(',')];
  for (const row of rows) {
    if (row.length !== heading.length) {
      throw new RangeError(`rows must have ${heading.length} fields, got ${row.length}`);
    }
    const wrong = row.find((text) => !numberText.test(text));
    if (wrong !== undefined) {
      throw new RangeError(`a field must be a number or empty, got ${wrong}`);
    }
    lines.push(row.join(','));
  }
  return lines.map((line) => `${line}\r\n`).join('');
}

function defuse(text: string): string {
  return formulaSigns.test(text) ? `'${text}` : text;
}

function quoteField(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/**
 * Rows of text as comma-separated values, by the same rules; plain numbers stay as they are, any
 * other field that a spreadsheet would run as a formula gets an apostrophe before it. Throws
 * RangeError when a row has another length than the heading.
 */
export function csvTable(heading: readonly string[], rows: Iterable<readonly string[]>): string {
  const lines = [heading, ...rows].map((row) => {
    if (row.length !== heading.length) {
      throw new RangeError(`rows must have ${heading.length} fields, got ${row.length}`);
    }
    return row.map((text) => (numberText.test(text) ? text : quoteField(defuse(text)))).join(',');
  });
  return lines.map((line) => `${line}\r\n`).join('');
}
