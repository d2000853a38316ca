import MarkdownIt from "markdown-it";

/** No HTML of a record’s own gets through; line breaks stay. */
const MARKDOWN = new MarkdownIt({ html: false, breaks: true, linkify: false });

/** A draft’s text as Markdown: what would be read as markup is escaped, headings and lists of ours stay. */
export function toMarkdown(text: string): string {
  return text
    .split("\n")
    .map((line) => {
      const [, lead = "", rest = line] = /^(# |- )?(.*)$/u.exec(line) ?? [];
      return `${lead}${escaped(rest)}`;
    })
    .join("\n");
}

/** A draft’s text as HTML, ready to be pasted into a page. */
export function toHtml(text: string): string {
  return MARKDOWN.render(toMarkdown(text)).trim();
}

/** Backslashes before every character that Markdown reads (CommonMark 0.31 §2.4); a list number loses its dot’s power. */
function escaped(text: string): string {
  return text
    .replace(/[\\`*_[\]<>&|~^]/gu, (mark) => `\\${mark}`)
    .replace(/^([#+\-=])/u, "\\$1")
    .replace(/^(\d+)([.)])/u, "$1\\$2");
}
