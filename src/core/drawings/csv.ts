export type CsvCell = string | number;

/** Reads as a number, with or without a unit after it: no spreadsheet takes it for a formula that calls out. */
const PLAIN_NUMBER = /^[+-]?[\d.,/ ]+[a-zA-Z°µ·²³%"']{0,6}$/;

/**
 * A table as CSV by RFC 4180: comma, CRLF after every row, quotes doubled. Numbers are written in full; a text that a
 * spreadsheet would run as a formula (= + − @, tab or return first) gets an apostrophe before it.
 * @throws RangeError for a number that is not finite or a row that is not as long as the header
 */
export function csvOf(header: readonly string[], rows: readonly (readonly CsvCell[])[]): string {
  return [header, ...rows]
    .map((row) => {
      if (row.length !== header.length)
        throw new RangeError(`a row has ${row.length} cells, the header ${header.length}`);
      return `${row.map(cellText).join(',')}\r\n`;
    })
    .join('');
}

function cellText(cell: CsvCell): string {
  if (typeof cell === 'number') {
    if (!Number.isFinite(cell)) throw new RangeError(`cannot write ${cell}`);
    return String(cell + 0);
  }
  const guarded = /^[=+\-@\t\r]/.test(cell) && !PLAIN_NUMBER.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
