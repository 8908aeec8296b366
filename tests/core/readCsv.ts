/** A plain reader after RFC 4180: CRLF between records, a quoted field ends at a quote that is not doubled. Throws on anything else. */
export function readCsv(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  for (let at = 0; at < text.length; ) {
    const [field, next] = text[at] === '"' ? quoted(text, at + 1) : bare(text, at);
    row.push(field);
    if (text[next] === ',') at = next + 1;
    else if (text.startsWith('\r\n', next)) {
      rows.push(row);
      row = [];
      at = next + 2;
      continue;
    } else throw new Error(`neither a comma nor CRLF at ${next}`);
    if (at === text.length) throw new Error('the last record has no CRLF');
  }
  return rows;
}

function quoted(text: string, from: number): [string, number] {
  let field = '';
  for (let at = from; at < text.length; at++) {
    if (text[at] !== '"') field += text[at];
    else if (text[at + 1] === '"') {
      field += '"';
      at++;
    } else return [field, at + 1];
  }
  throw new Error('a quoted field does not end');
}

function bare(text: string, from: number): [string, number] {
  const found = /[,"\r\n]/g;
  found.lastIndex = from;
  const end = found.exec(text)?.index ?? text.length;
  if (text[end] === '"' || text[end] === '\n') throw new Error(`a bare field with a quote or a line break at ${end}`);
  return [text.slice(from, end), end];
}
