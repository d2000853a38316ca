declare module "webvtt-parser" {
  type Cue = {
    readonly startTime: number;
    readonly endTime: number;
    readonly tree: { readonly children: readonly { readonly value: string }[] };
  };
  export class WebVTTParser {
    constructor(entities: Readonly<Record<string, string>>);
    parse(
      text: string,
      mode: "chapters" | "metadata" | "subtitles",
    ): { readonly cues: readonly Cue[]; readonly errors: readonly unknown[] };
  }
}
