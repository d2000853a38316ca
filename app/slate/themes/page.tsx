import Link from "next/link";
import { requestContext } from "#app/_server/context.ts";
import { PageHead } from "#app/_ui/page-head.tsx";
import bible from "#app/bible/bible.module.css";
import { singleValues } from "#app/larder/single-values.ts";
import { SwitchButton } from "#app/bible/switch-button.client.tsx";
import { mediumDay, monthName, monthsLater, partsOf, type Day } from "#lib/calendar/index.ts";
import { findThemes } from "#lib/use-cases/themes/find-themes.ts";
import { loadThemes, type ThemeView } from "#lib/use-cases/themes/load-themes.ts";
import { FindThemesInput } from "#lib/use-cases/themes/theme.input.ts";
import { retireThemeAction } from "./actions.ts";
import { IdeasInbox } from "./ideas-inbox.client.tsx";
import { seasonWords } from "./season-words.ts";
import { ThemeFilter } from "./theme-filter.tsx";

export const metadata = { title: "Themes" };

export default async function ThemesPage({ searchParams }: PageProps<"/slate/themes">) {
  const context = await requestContext();
  const { themes, ideas } = await loadThemes(context);
  const asked = FindThemesInput.parse(singleValues(await searchParams));
  const found = findThemes(themes, asked);
  const inUse = themes.filter((theme) => !theme.isRetired).length;
  return (
    <>
      <PageHead kicker={`Slate, ${inUse} themes in the pool`} title="Themes">
        <Link className="btn" href="/slate/themes/new" prefetch={false}>
          Add a theme
        </Link>
      </PageHead>
      <div className={bible.stack}>
        <section className="sheet" aria-labelledby="inbox">
          <h2 id="inbox">Ideas from viewers</h2>
          <IdeasInbox ideas={ideas} />
        </section>
        <section className="sheet" aria-labelledby="pool">
          <h2 id="pool">The pool</h2>
          <ThemeFilter
            asked={asked}
            found={found.length}
            all={themes.length}
            nextMonth={monthName(monthsLater(context.today, 1))}
          />
          {found.length === 0 && (
            <p className="quiet">No theme fits that. Loosen the filter, or add a theme.</p>
          )}
          <ul className={bible.rows}>
            {found.map((theme) => (
              <li key={theme.id}>
                <div>
                  <Link className={bible.name} href={`/slate/themes/${theme.id}`} prefetch={false}>
                    {theme.name}
                  </Link>
                  <p className="small quiet">
                    {[
                      ...(theme.isRetired ? ["retired"] : []),
                      seasonWords(theme.season),
                      ...(theme.motifs.length > 0 ? [theme.motifs.join(", ")] : []),
                      ...(theme.palette.length > 0 ? [`in ${theme.palette.join(", ")}`] : []),
                    ].join("; ")}
                  </p>
                  <p className="small">{whenOf(theme, context.today)}</p>
                  {theme.near.length > 0 && (
                    <p className="small quiet">
                      Near to{" "}
                      {theme.near.map(({ name, shared }) => `${name} (${shared})`).join(", ")}.
                    </p>
                  )}
                </div>
                <SwitchButton
                  label={theme.isRetired ? "Bring back" : "Retire"}
                  spoken={`${theme.isRetired ? "Bring back" : "Retire"} ${theme.name}`}
                  action={retireThemeAction}
                  input={{ id: theme.id, isRetired: !theme.isRetired }}
                />
              </li>
            ))}
          </ul>
        </section>
      </div>
    </>
  );
}

function whenOf(theme: ThemeView, today: Day): string {
  const dated = (day: Day): string =>
    partsOf(day)[0] === partsOf(today)[0] ? mediumDay(day) : `${mediumDay(day)} ${partsOf(day)[0]}`;
  const times = theme.times === 1 ? "On once" : `On ${theme.times} times`;
  return [
    theme.lastOn === null ? "Not on yet" : `${times}, last in the week of ${dated(theme.lastOn)}`,
    ...(theme.plannedOn === null ? [] : [`planned for the week of ${dated(theme.plannedOn)}`]),
    theme.possibleOn === null
      ? "no week of the next three years fits"
      : `next possible in the week of ${dated(theme.possibleOn)}`,
  ].join("; ");
}
