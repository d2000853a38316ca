import { expect, test } from "vitest";
import { checkLunch, type BoxItem } from "#lib/safety/index.ts";
import { child, item, lunch } from "./box.ts";

const check = (...items: readonly BoxItem[]) =>
  checkLunch(lunch(...items), { children: [child()], rules: [], journey: null, scheme: "off" });

test("what is marked stays out, and no note can keep it", () => {
  const [finding, ...others] = check(item("hummus", { recall: "lot 7" }), item("apple"));
  expect(others).toEqual([]);
  expect(finding).toMatchObject({ kind: "recall", level: "stop", mayKeep: false });
  expect(finding?.sentence).toBe("Hummus is marked as recalled or suspect (lot 7).");
});

test("where nobody noted the product, one that is marked is asked about", () => {
  const [finding] = check(item("hummus", { maybeRecalled: "House hummus, tub" }));
  expect(finding).toMatchObject({ kind: "recall", level: "look", mayKeep: true });
  expect(finding?.sentence).toBe(
    "House hummus, tub is marked as recalled or suspect, and which product this hummus is stands nowhere.",
  );
  const both = check(item("hummus", { recall: "", maybeRecalled: "House hummus, tub" }));
  expect(both.map(({ level }) => level)).toEqual(["stop"]);
});
