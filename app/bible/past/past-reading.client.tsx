"use client";

import { Choice } from "#app/_forms/choice.client.tsx";
import { Tick } from "#app/_forms/tick.client.tsx";
import {
  DATE_STYLES,
  DELIMITERS,
  PAST_FIELDS,
  type PastField,
  type PastReading,
} from "#lib/use-cases/past/past.input.ts";
import type { PastReport } from "#lib/use-cases/past/report-past.ts";
import styles from "../bible.module.css";

/** How the file is read: delimiter, dates, and which column says what. */
export function PastReadingFields({
  reading,
  report,
  onChange,
}: {
  readonly reading: PastReading;
  readonly report: PastReport;
  readonly onChange: (reading: PastReading) => void;
}) {
  const columns = report.header.map((title, index) => {
    const sample = report.samples.map((cells) => cells[index] ?? "").find(Boolean) ?? "";
    const name = reading.hasHeader && title !== "" ? title : `column ${index + 1}`;
    const example = sample === "" ? "" : `, such as ${sample.slice(0, 24)}`;
    return [String(index), `${name}${example}`] as const;
  });
  const mapped = (field: PastField, value: string): PastReading["columns"] => {
    const others = Object.fromEntries(
      Object.entries(reading.columns).filter(([name]) => name !== field),
    );
    return value === "" ? others : { ...others, [field]: Number(value) };
  };
  return (
    <>
      <div className={styles.fields}>
        <Choice
          label="Between the cells stands"
          options={DELIMITERS.map((one) => [one, DELIMITER_WORDS[one]] as const)}
          value={reading.delimiter}
          onChange={(event) => {
            const delimiter = DELIMITERS.find((one) => one === event.target.value);
            if (delimiter) onChange({ ...reading, delimiter });
          }}
        />
        <Choice
          label="Dates are written"
          options={DATE_STYLES.map((one) => [one, DATE_WORDS[one]] as const)}
          value={reading.dates}
          onChange={(event) => {
            const dates = DATE_STYLES.find((one) => one === event.target.value);
            if (dates) onChange({ ...reading, dates });
          }}
        />
      </div>
      <div>
        <Tick
          label="The first line names the columns"
          checked={reading.hasHeader}
          onChange={(event) => {
            onChange({ ...reading, hasHeader: event.target.checked });
          }}
        />
      </div>
      <h3>Which column says what</h3>
      <div className={styles.fields}>
        {PAST_FIELDS.map((field) => (
          <Choice
            key={field}
            label={FIELD_WORDS[field]}
            options={[["", "not in this file"], ...columns]}
            value={String(reading.columns[field] ?? "")}
            onChange={(event) => {
              onChange({ ...reading, columns: mapped(field, event.target.value) });
            }}
          />
        ))}
      </div>
    </>
  );
}

const DELIMITER_WORDS = {
  ",": "a comma",
  ";": "a semicolon",
  "\t": "a tab",
  "|": "a bar",
} as const;
const DATE_WORDS = {
  ymd: "year first: 2026-03-11",
  dmy: "day first: 11.03.2026",
  mdy: "month first: 03/11/2026",
} as const;
const FIELD_WORDS: Readonly<Record<PastField, string>> = {
  date: "Date (needed)",
  theme: "Theme of the week",
  item: "Item (needed)",
  amount: "Amount",
  unit: "Unit, if apart",
  part: "Part of the lunch",
  trick: "Tricks",
  shop: "Shop",
  child: "Child",
  eaten: "Eaten",
  face: "Face, 0 to 100",
  quote: "Quote",
};
