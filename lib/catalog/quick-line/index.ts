/** Quick line: a whole lunch typed in one text field. */
export { describeDoubt } from "./describe-doubt.ts";
export {
  parseQuickLine,
  type QuickDoubt,
  type QuickFood,
  type QuickItem,
} from "./parse-quick-line.ts";
