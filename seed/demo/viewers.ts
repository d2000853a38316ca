import { addDays, weeksLater, type Day } from "#lib/calendar/index.ts";
import type { DemoEpisode, DemoIdea, DemoPromise } from "./records.ts";

/** "made days ago | due in days or − | kept days ago or − | what | note" */
const PROMISES = [
  "300|-|270|Bake the fish cakes on camera, start to finish.|Took two shoots.",
  "214|-|160|Let Pepper choose a whole week.|It was mostly cheese.",
  "150|-|121|Show the inside of the lamp room.|Filmed on a closing day.",
  "96|-|75|Pack one lunch without talking.|Eleven minutes, one cough.",
  "41|9|-|Bring back the wavy cut.|Asked for under three videos.",
  "25|17|-|A lunch that is only one colour.|Green was voted in.",
  "12|30|-|Try kiwi again with Pepper, and show it whichever way it goes.|",
  "6|-|-|Read out the gull’s fan mail.|No date promised.",
];

/** Promises made to viewers, kept and open, each kept one tied to the episode of that week. */
export function tellPromises(today: Day, episodes: readonly DemoEpisode[]): DemoPromise[] {
  return PROMISES.map((line, index) => {
    const [made = "0", due = "-", kept = "-", what = "", note = ""] = line.split("|");
    const keptOn = kept === "-" ? null : addDays(today, -Number(kept));
    const dueOn = due === "-" ? null : addDays(today, Number(due));
    const day = keptOn ?? dueOn;
    const episode = episodes.find(
      ({ weekOf }) => day !== null && weekOf <= day && day < weeksLater(weekOf, 1),
    );
    return {
      ...{ id: `promise-${index + 1}`, what, note, dueOn, keptOn },
      ...{ episodeId: episode?.id ?? null, madeOn: addDays(today, -Number(made)) },
    };
  });
}

const IDEAS: readonly (readonly [daysAgo: number, DemoIdea["state"], string, string])[] = [
  [88, "theme", "Do a week about maps, where each lunch shows where the next one is hidden.", ""],
  [63, "passed", "Lunch for the gull. He has earned it.", "He takes his own share."],
  [47, "promise", "Please, please the wavy cut again!", ""],
  [33, "food", "Have you ever tried kohlrabi? Ours eats it like apple.", ""],
  [19, "inbox", "Could Biscuit pack Pepper’s tin once, and the other way round?", ""],
  [14, "inbox", "A week where every lunch fits into one mug.", ""],
  [9, "inbox", "My class wants to know how you keep the crackers crisp.", ""],
  [5, "inbox", "Ship’s biscuits! But ones you can bite.", ""],
  [2, "inbox", "What about a lunch in the order of the alphabet?", ""],
];

/** Ideas sent in by viewers, newest last. */
export function tellIdeas(today: Day): DemoIdea[] {
  return IDEAS.map(([daysAgo, state, text, note], index) => ({
    ...{ id: `idea-${index + 1}`, text, state, note },
    ...{ receivedOn: addDays(today, -daysAgo), becameId: becameOf(state) },
  }));
}

function becameOf(state: DemoIdea["state"]): string | null {
  if (state === "theme") return "map-makers";
  if (state === "food") return "kohlrabi";
  return state === "promise" ? "promise-5" : null;
}
