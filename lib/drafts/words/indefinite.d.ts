declare module "indefinite" {
  /** The word with "a" or "an" before it. */
  export default function indefinite(word: string): string;
}
