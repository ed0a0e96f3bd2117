// The few marks every drawing is made of, as SVG text. Colors are CSS variables of the page with
// fallbacks that print; nothing depends on color, on a script or on an id.

export type Point = readonly [x: number, y: number];

/** What a drawing gives: the picture, and in words and numbers the same thing. */
export interface Drawing {
  readonly svg: string;
  readonly title: string;
  /** The finding, in one sentence. */
  readonly finding: string;
  readonly table: {
    readonly columns: readonly string[];
    readonly rows: readonly (readonly string[])[];
  };
}

const INK = 'currentColor';
const QUIET = 'var(--quiet, #333333)';
const LINE = 'var(--edge, #555555)';
const FAINT = 'var(--line, #aaaaaa)';
const PAPER = 'var(--sheet, #ffffff)';
const FACE = 'var(--face, DejaVu Sans, sans-serif)';

export const STROKES = {
  ink: `fill:none;stroke:${INK};stroke-width:1.4`,
  bold: `fill:none;stroke:${INK};stroke-width:2.6`,
  line: `fill:none;stroke:${LINE};stroke-width:1`,
  faint: `fill:none;stroke:${FAINT};stroke-width:0.8`,
  hatch: `fill:none;stroke:${LINE};stroke-width:0.7`,
} as const;

export const FILLS = {
  ink: `fill:${INK};stroke:none`,
  paper: `fill:${PAPER};stroke:${INK};stroke-width:1.4`,
  blank: `fill:${PAPER};stroke:none`,
  quiet: `fill:${QUIET};stroke:none`,
} as const;

/** Two decimals: finer than print, and the same text on every machine. */
export const n = (value: number): string => String(Math.round(value * 100) / 100);

export const escaped = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');

export const path = (d: string, style: string, dash = ''): string =>
  `<path d="${d}" style="${style}${dash === '' ? '' : `;stroke-dasharray:${dash}`}"/>`;

export const line = (a: Point, b: Point, style: string, dash = ''): string =>
  path(`M${n(a[0])} ${n(a[1])}L${n(b[0])} ${n(b[1])}`, style, dash);

export const polygon = (points: readonly Point[], style: string): string =>
  path(`M${points.map(([x, y]) => `${n(x)} ${n(y)}`).join('L')}Z`, style);

export const box = (x: number, y: number, width: number, height: number, style: string): string =>
  `<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}" style="${style}"/>`;

export interface TextLook {
  readonly size?: number;
  readonly anchor?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly quiet?: boolean;
  /** Degrees, counter-clockwise on the page. */
  readonly turned?: number;
  /** A rim of paper around the letters, where they lie on lines. */
  readonly rim?: boolean;
}

export function text([x, y]: Point, words: string, look: TextLook = {}): string {
  const { size = 12, anchor = 'start', bold, quiet, turned, rim } = look;
  const style = [
    `font-size:${size}px`,
    `text-anchor:${anchor}`,
    `fill:${quiet ? QUIET : INK}`,
    ...(bold ? ['font-weight:bold'] : []),
  ];
  const turn = turned ? ` transform="rotate(${n(-turned)} ${n(x)} ${n(y)})"` : '';
  const at = `x="${n(x)}" y="${n(y)}"${turn}`;
  const letters = escaped(words);
  const rimStyle = `;stroke:${PAPER};stroke-width:3;stroke-linejoin:round`;
  const under = rim
    ? `<text ${at} aria-hidden="true" style="${style.join(';')}${rimStyle}">${letters}</text>`
    : '';
  return `${under}<text ${at} style="${style.join(';')}">${letters}</text>`;
}

/** About how wide words are, for placing them; generous. */
export const widthOf = (words: string, size = 12): number => words.length * size * 0.6;

/** Words broken into lines of at most so many letters; a longer word stands alone. */
export function wrapped(words: string, letters: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= letters)
      lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}

export function sheet(
  title: string,
  finding: string,
  width: number,
  height: number,
  body: readonly string[],
): string {
  const size = `viewBox="0 0 ${n(width)} ${n(height)}" width="100%"`;
  const style = `font-family:${FACE};max-width:${n(width)}px;height:auto`;
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" ${size} style="${style}">` +
    `<title>${escaped(title)}</title><desc>${escaped(finding)}</desc>${body.join('')}</svg>`
  );
}

/** The drawing for paper: black ink, every variable replaced by its fallback, its own size. */
export function forPrint(svg: string): string {
  const [, width = '720', height = '400'] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? [];
  return svg
    .replaceAll(/var\(--[a-z0-9-]+, ([^()]*)\)/g, '$1')
    .replaceAll('currentColor', '#000000')
    .replace('width="100%"', `width="${width}" height="${height}"`);
}
