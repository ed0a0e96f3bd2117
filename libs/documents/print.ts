// The parts that papers are made of, as plain text ready for a template.

import { forPrint, type Drawing } from '#drawings';

export interface PrintTable {
  readonly caption: string;
  readonly columns: readonly PrintColumn[];
  readonly rows: readonly (readonly string[])[];
}

export interface PrintColumn {
  readonly name: string;
  /** Numbers stand right. */
  readonly right?: boolean;
  /** Share of the width; a column without one is as wide as its words. */
  readonly share?: number;
}

/** "Profile" and "Ribbed 36, 36 in". */
export type Pair = readonly [what: string, value: string];

export interface PrintDrawing {
  readonly svg: string;
  readonly alt: string;
  readonly title: string;
  readonly finding: string;
  readonly table: PrintTable | null;
}

/** A drawing for paper; its table is printed below unless the same numbers stand beside it. */
export function printDrawing(drawing: Drawing, table: 'below' | 'beside' = 'below'): PrintDrawing {
  const { title, finding, svg } = drawing;
  return {
    svg: forPrint(svg),
    alt: `${title}. ${finding}`,
    title,
    finding,
    table:
      table === 'beside'
        ? null
        : {
            caption: title,
            columns: drawing.table.columns.map((name) => ({ name })),
            rows: drawing.table.rows,
          },
  };
}

export const column = (name: string, share?: number): PrintColumn =>
  share === undefined ? { name } : { name, share };
export const numbers = (name: string): PrintColumn => ({ name, right: true });

/** One part of a paper: a heading and whichever of these it has. */
export interface Section {
  readonly name: string;
  readonly level?: 1 | 2;
  readonly words?: readonly string[];
  readonly pairs?: readonly Pair[];
  readonly list?: readonly string[];
  readonly tables?: readonly PrintTable[];
  readonly drawings?: readonly PrintDrawing[];
}
