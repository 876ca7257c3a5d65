/** Pages of one part of the report: `page` names them for the style sheet. */
export interface PagePart {
  page: string;
  title: string;
}

/** Letters of a title at the foot of a page, so that it stays one line with the part. */
const LONGEST = 44;

/** Text as a string of a style sheet. */
const quoted = (text: string): string =>
  `"${text.replace(/["\\]/g, '\\$&').replace(/[\n\r\f<]/g, (c) => `\\${c.codePointAt(0)!.toString(16)} `)}"`;

/**
 * The style sheet of the printed page: A4, margins, and at the foot of every page the home, the part, and n of m. The
 * texts are the home's own, so the rules are made for each report.
 */
export function pageRules(home: string, parts: readonly PagePart[]): string {
  const named = home.length > LONGEST ? `${home.slice(0, LONGEST).trimEnd()}…` : home;
  const foot = (part: string) => `content: ${quoted(`${named} · ${part}`)};`;
  const type = `font: 400 8.6pt Rosario, system-ui, sans-serif; font-feature-settings: 'lnum'; color: #5b525e;
    border-top: 1.5px solid #261c29; vertical-align: top; padding-top: 2mm;`;
  return `@page {
  size: A4; margin: 16mm 15mm 14mm 20mm;
  @bottom-left { ${foot(parts[0]?.title ?? '')} ${type} width: 80%; text-align: left; }
  @bottom-right { content: counter(page) " of " counter(pages); ${type} width: 20%; text-align: right; }
}
${parts.map(({ page, title }) => `@page ${page} { @bottom-left { ${foot(title)} } }`).join('\n')}`;
}
