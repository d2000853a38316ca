import { z } from "zod";

/** Shortest passphrase; NIST SP 800-63B-4 asks 15 of a lone password and takes spaces (from memory). */
const CHARACTERS_MIN = 15;

/** A passphrase as typed: long rather than odd, spaces welcome, compared after Unicode NFKC. */
export const Passphrase = z
  .string()
  .max(200, "Use at most 200 characters.")
  .transform((typed) => typed.normalize("NFKC").trim())
  .refine((phrase) => [...phrase].length >= CHARACTERS_MIN, {
    message: `Use at least ${CHARACTERS_MIN} characters: four or five words that nobody would guess.`,
  })
  .refine((phrase) => new Set(phrase.toLowerCase()).size >= 6, {
    message: "Use more different letters: this one is too easy to guess.",
  });
