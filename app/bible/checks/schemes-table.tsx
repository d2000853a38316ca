import { CONSUMER_SCHEME, RETAIL_SCHEME, SOURCES } from "#lib/safety/index.ts";

const ROWS = [
  { scheme: CONSUMER_SCHEME, source: SOURCES["heat-fsis"], use: "Lunches are judged by this one." },
  {
    scheme: RETAIL_SCHEME,
    source: SOURCES["heat-food-code"],
    use: "For the trade, with written marks; shown to be told apart.",
  },
] as const;

/** The two temperature schemes, side by side and never mixed, and what the model leaves out. */
export function SchemesTable() {
  return (
    <>
      <h2>How temperatures are judged</h2>
      <div
        role="region"
        aria-label="Temperature schemes"
        tabIndex={0}
        style={{ overflowX: "auto" }}
      >
        <table>
          <thead>
            <tr>
              <th>Scheme</th>
              <th className="n">Cold up to</th>
              <th className="n">Hot from</th>
              <th className="n">Between them</th>
              <th>Source</th>
            </tr>
          </thead>
          <tbody>
            {ROWS.map(({ scheme, source, use }) => (
              <tr key={scheme.name}>
                <td>
                  <strong>{scheme.name}</strong>
                  <br />
                  <span className="small quiet">{use}</span>
                </td>
                <td className="n">{scheme.coldMaxC.toFixed(1)}&nbsp;°C</td>
                <td className="n">{scheme.hotMinC.toFixed(1)}&nbsp;°C</td>
                <td className="n">{scheme.outMinutesMax / 60}&nbsp;h</td>
                <td className="small">
                  {source.title}: {source.where}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="small quiet" style={{ marginTop: "var(--s3)" }}>
        The model takes the food of a box, and that of a jar, as one well-mixed lump. Walls may be
        off by a quarter (a tenth where you read a thermometer), contact with the packs by half, the
        room by 2 °C indoors and 5 °C by the month; the range beside each answer takes them all at
        their kind and at their unkind end. What lies inside thick food it does not know.
      </p>
    </>
  );
}
