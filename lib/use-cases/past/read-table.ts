import { CsvError, parse } from "csv-parse/sync";
import { DELIMITERS, type PastReading } from "./past.input.ts";

/** One record of a file and the line it begins on, counted from 1. */
export type TableRow = { readonly line: number; readonly cells: readonly string[] };

/** A file taken apart, and what could not be. */
export type Table = {
  readonly rows: readonly TableRow[];
  readonly broken: readonly { readonly line: number; readonly message: string }[];
};

/**
 * Takes a text of comma-separated values apart by RFC 4180: quoted cells may hold the delimiter, line
 * breaks and doubled quotes; line ends may be CRLF, LF or CR. A broken record is told and left out.
 */
export function readTable(text: string, delimiter: PastReading["delimiter"]): Table {
  const broken: { line: number; message: string }[] = [];
  const records = parse(text, {
    bom: true,
    delimiter,
    info: true,
    record_delimiter: ["\r\n", "\n", "\r"],
    relax_column_count: true,
    skip_empty_lines: true,
    skip_records_with_error: true,
    on_skip: (problem) => {
      broken.push({ line: lineOf(problem), message: describeBroken(problem) });
      return undefined;
    },
  }) as unknown as readonly { record: string[]; info: { lines: number } }[];
  const starts = recordStarts(records);
  return {
    rows: records.map(({ record }, index) => ({ line: starts[index] ?? 0, cells: record })),
    broken,
  };
}

/** The delimiter that the first line holds most often; a comma when it holds none. */
export function guessDelimiter(text: string): PastReading["delimiter"] {
  const bare = text.slice(0, 20_000).replaceAll(/"(?:[^"]|"")*"/g, "");
  const first = bare.split(/\r\n|\n|\r/, 1)[0] ?? "";
  const counts = DELIMITERS.map((delimiter) => ({
    delimiter,
    count: first.split(delimiter).length - 1,
  }));
  const most = counts.reduce((best, one) => (one.count > best.count ? one : best));
  return most.count === 0 ? "," : most.delimiter;
}

/** A record says the line it ends on; those with line breaks inside begin as many lines earlier. */
function recordStarts(
  records: readonly { readonly record: readonly string[]; readonly info: { lines: number } }[],
): number[] {
  return records.map(({ record, info }) => {
    const breaks = record.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/g)?.length ?? 0), 0);
    return info.lines - breaks;
  });
}

function lineOf(problem: CsvError | undefined): number {
  const line: unknown = problem?.["lines"];
  return typeof line === "number" ? line : 1;
}

function describeBroken(problem: CsvError | undefined): string {
  switch (problem?.code) {
    case "CSV_QUOTE_NOT_CLOSED":
      return "A quotation mark opens here and never closes.";
    case "INVALID_OPENING_QUOTE":
      return "A quotation mark stands inside a cell that does not begin with one. Put the cell in quotation marks and double those inside.";
    case "CSV_INVALID_CLOSING_QUOTE":
      return "Something stands between a closing quotation mark and the next cell.";
    default:
      return "This line could not be taken apart.";
  }
}
