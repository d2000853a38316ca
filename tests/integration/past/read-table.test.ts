import { expect, test } from "vitest";
import { guessDelimiter, readTable } from "#lib/use-cases/past/read-table.ts";

const cellsOf = (text: string): (readonly string[])[] =>
  readTable(text, ",").rows.map(({ cells }) => cells);

// RFC 4180 section 2, the example of each rule.
test.each([
  [
    "2.1 lines end in CRLF",
    "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
    [
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  [
    "2.2 the last line may lack its end",
    "aaa,bbb,ccc\r\nzzz,yyy,xxx",
    [
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  ["2.4 spaces are part of a cell", " aaa, bbb\r\n", [[" aaa", " bbb"]]],
  [
    "2.5 cells may be quoted",
    '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
    [
      ["aaa", "bbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  [
    "2.6 quoted cells hold line breaks",
    '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
    [
      ["aaa", "b\r\nbb", "ccc"],
      ["zzz", "yyy", "xxx"],
    ],
  ],
  ["2.7 a quotation mark is doubled", '"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
])("RFC 4180, %s", (_, text, rows) => {
  expect(cellsOf(text)).toEqual(rows);
});

test("each record knows the line it begins on, and a broken one is told by its line", () => {
  const { rows, broken } = readTable('a,b\r\n1,"x\ny"\r\n\r\n2,z\r\nx"y,3\r\n4,5\r\n', ",");
  expect(rows.map(({ line }) => line)).toEqual([1, 2, 5, 7]);
  expect(broken.map(({ line }) => line)).toEqual([6]);
  expect(readTable('a\n"open\nb\n', ",").broken[0]?.message).toContain("never closes");
});

test.each([
  [";", "date;item;note, if any\n1;2;3"],
  ["\t", "date\titem\n"],
  [",", '"a;b;c",d,e\n'],
  [",", "alone"],
])("%s is found as the delimiter", (delimiter, text) => {
  expect(guessDelimiter(text)).toBe(delimiter);
});
