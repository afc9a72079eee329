/**
 * Reads comma-separated values by the grammar of RFC 4180, section 2, and nothing else: CRLF ends
 * every record, quotation marks stand round a whole field or not at all.
 */
export function readStrictCsv(text: string): string[][] {
  const records: string[][] = [];
  let at = 0;
  while (at < text.length) {
    const record: string[] = [];
    for (;;) {
      const quoted = /^"((?:[^"]|"")*)"/.exec(text.slice(at));
      const plain = /^[^",\r\n]*/.exec(text.slice(at))?.[0] ?? '';
      const taken = quoted ? quoted[0] : plain;
      record.push(quoted ? (quoted[1] ?? '').replaceAll('""', '"') : plain);
      at += taken.length;
      if (text[at] === ',') at++;
      else if (text.startsWith('\r\n', at)) break;
      else throw new Error(`no end of field at ${at}`);
    }
    at += 2;
    records.push(record);
  }
  return records;
}
